package sledwright.cli;

import sledwright.desk.Misasking;
import sledwright.desk.Reply;
import sledwright.input.FaultsException;

/** Replies of the desk in the words of a command line. */
final class Replies {

    private Replies() {
    }

    /**
     * @throws FaultsException when something is wrong in what was read
     * @throws UsageException  when something is wrong with what was asked
     */
    static <A> A answer(Reply<A> reply) {
        if (reply instanceof Reply.Faulty<A> faulty) {
            throw new FaultsException(faulty.faults());
        }
        if (reply instanceof Reply.Misasked<A> misasked) {
            throw new UsageException(words(misasked.what()));
        }
        return ((Reply.Answered<A>) reply).answer();
    }

    private static String words(Misasking what) {
        String key = what.key().isEmpty() ? "" : "--%s %s".formatted(what.key(), what.value());
        return key + what.problem() + what.way().map(way -> "\nMaybe " + words(way, what.key()) + ".").orElse("");
    }

    private static String words(Misasking.Way way, String key) {
        if (way instanceof Misasking.Way.MoreAlternatives more) {
            return "take %s, or ask for more with --set alternatives=%s"
                    .formatted(more.found() == 1 ? "1" : "one of 1 to " + more.found(), more.wanted());
        }
        return way instanceof Misasking.Way.GiveEnergy ? "add --years 4 --price-per-kwh 0.30, or a section energy to the file"
                : "leave --%s out".formatted(key);
    }
}
