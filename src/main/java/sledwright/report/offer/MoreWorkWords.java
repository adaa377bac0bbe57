package sledwright.report.offer;

import sledwright.desk.view.MoreWork;
import sledwright.report.page.Wording;

/** What one step of work costs, in the words of documents. */
final class MoreWorkWords {

    private final Wording words;

    MoreWorkWords(Wording words) {
        this.words = words;
    }

    String of(MoreWork more) {
        return more.next().map(this::of).orElseGet(() -> words.say("more.none", words.figure(more.step()) + "\u00a0%"));
    }

    private String of(MoreWork.Next next) {
        String key = next.extra().signum() == 0 ? "more.same" : next.extra().signum() > 0 ? "more.dearer" : "more.cheaper";
        String swaps = next.swaps().isEmpty() ? words.say("more.otherwise") : words.list(next.swaps().stream()
                .map(swap -> words.say("more.swap", swap.to(), swap.from())).toList());
        return words.say(key, words.figure(next.percent()) + "\u00a0%", words.figure(Math.rint(next.work() * 10) / 10), swaps,
                words.money(next.extra().abs())) + (next.freed() ? " " + words.say("more.freed") : "")
                + (next.within() ? "" : " " + words.say("more.above"));
    }
}
