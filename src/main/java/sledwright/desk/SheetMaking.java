package sledwright.desk;

import java.util.OptionalInt;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.SheetAnswer;
import sledwright.generator.Search;
import sledwright.planner.Outcome;
import sledwright.planner.Planner;
import sledwright.request.Job;

/** What the bench puts together. */
final class SheetMaking {

    private final Job job;
    private final Search search;
    private final OptionalInt rank;
    private final Terms terms;

    private SheetMaking(Job job, Search search, OptionalInt rank, Terms terms) {
        this.job = job;
        this.search = search;
        this.rank = rank;
        this.terms = terms;
    }

    static Reply<SheetAnswer> answer(Job job, Search search, SheetQuestion asked, Terms terms) {
        SheetMaking making = new SheetMaking(job, search, asked.rank(), terms);
        if (asked.rank().isPresent() && !(job instanceof Job.Quote)) {
            return misasked(asked.rank().getAsInt(), "only a quote has alternatives to choose from.", new Misasking.Way.LeaveOut());
        }
        if (job instanceof Job.Judge build) {
            return new Reply.Answered<>(making.ofBuild(build));
        }
        if (job instanceof Job.Order order) {
            return new Reply.Answered<>(making.ofOrder(order));
        }
        return job instanceof Job.Upgrade upgrade ? new Reply.Answered<>(making.ofUpgrade(upgrade)) : making.ofQuote((Job.Quote) job);
    }

    private static Reply<SheetAnswer> misasked(int rank, String sentence, Misasking.Way way) {
        return new Reply.Misasked<>(Misasking.of("rank", String.valueOf(rank), sentence, way));
    }

    private SheetAnswer ofBuild(Job.Judge build) {
        Checking checking = new Checking(build);
        return checking.violations().isEmpty() ? new SheetAnswer.Assembly(job.catalog(), checking.draw().order(), OptionalInt.empty())
                : new SheetAnswer.Invalid(job.name(), checking.violations());
    }

    private SheetAnswer ofOrder(Job.Order order) {
        OrderAnswer answer = Ordering.answer(order, search, terms);
        return answer.view().delivered() == 0 ? new SheetAnswer.NoMachines(job.name()) : new SheetAnswer.Machines(job.catalog(), answer);
    }

    private SheetAnswer ofUpgrade(Job.Upgrade upgrade) {
        Upgrading upgrading = new Upgrading(upgrade, terms);
        return upgrading.upgrade().plan().<SheetAnswer>map(plan -> new SheetAnswer.Change(job.catalog(), plan, upgrading.upgrade()))
                .orElseGet(() -> new SheetAnswer.NoUpgrade(job.name()));
    }

    private Reply<SheetAnswer> ofQuote(Job.Quote quote) {
        Outcome outcome = new Planner().plan(search.run(quote.request(), terms.deadline()));
        int alternatives = outcome.ranked().size();
        if (alternatives == 0) {
            return new Reply.Answered<>(new SheetAnswer.NoBuild(job.name()));
        }
        int chosen = rank.orElse(1);
        if (chosen > alternatives) {
            return misasked(chosen, "the list has %s.".formatted(alternatives == 1 ? "1 alternative" : alternatives + " alternatives"),
                    new Misasking.Way.MoreAlternatives(alternatives, chosen));
        }
        return new Reply.Answered<>(new SheetAnswer.Assembly(job.catalog(), outcome.ranked().get(chosen - 1).order(),
                OptionalInt.of(chosen)));
    }
}
