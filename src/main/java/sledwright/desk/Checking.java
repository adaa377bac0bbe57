package sledwright.desk;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import sledwright.desk.view.CheckView;
import sledwright.planner.StockDraw;
import sledwright.request.Job;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** A build held against every rule. */
final class Checking {

    private final StockDraw draw;
    private final List<Violation> violations;

    Checking(Job.Judge job) {
        Machine machine = Machine.of(job.build(), job.request(), job.catalog().throughputFactors());
        draw = StockDraw.of(Collections.nCopies(job.request().machines(), job.build()), job.request(), job.catalog());
        violations = Stream.concat(Rulebook.judge(machine).stream(), Rulebook.judge(draw.order()).stream()).toList();
    }

    /** The build with parts drawn from stock. */
    StockDraw draw() {
        return draw;
    }

    List<Violation> violations() {
        return violations;
    }

    CheckView view() {
        return CheckView.of(draw.order(), draw.complete(), violations);
    }
}
