package sledwright.desk;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.desk.view.CheckView;
import sledwright.domain.Build;
import sledwright.domain.Housed;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Housings;
import sledwright.metrics.PowerDraw;
import sledwright.planner.StockDraw;
import sledwright.request.Job;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** A build held against every rule. */
final class Checking {

    private final StockDraw draw;
    private final List<Violation> violations;

    Checking(Job.Judge job) {
        Build build = housed(job);
        Machine machine = Machine.of(build, job.request(), job.catalog().throughputFactors());
        draw = StockDraw.of(Collections.nCopies(job.request().machines(), build), job.request(), job.catalog());
        violations = Stream.of(Rulebook.judge(machine), enclosures(draw.order()), Rulebook.judge(draw.order()))
                .flatMap(List::stream).toList();
    }

    /** All enclosures are filled alike but the last, which may be emptier: the first tells what any of them breaks. */
    private static List<Violation> enclosures(Order order) {
        return order.housings().stream().limit(1).flatMap(housing -> Rulebook.judge(housing).stream()).toList();
    }

    /**
     * The build in the cheapest enclosures, where new ones are bought with it. Where stock has none on the request's terms it is in
     * others, and the rules tell what those break.
     */
    private static Build housed(Job.Judge job) {
        Build build = job.build();
        Request request = job.request();
        Request onAnyTerms = request.withLimit(request.limit().waiting().withConditions(Set.of()));
        List<Housings> shops = Stream.of(request, onAnyTerms)
                .map(asked -> new Housings(job.catalog(), asked, new Shelf(job.catalog(), asked), Set.of())).toList();
        if (!shops.get(0).needs(build.platform())) {
            return build;
        }
        long load = Watts.micro(PowerDraw.loadW(build));
        Optional<Housed> housed = shops.stream().flatMap(shop -> shop.cheapest(build.platform(), load).stream())
                .map(Housings.Priced::housed).findFirst().or(() -> shops.get(0).strongest(build.platform(), load));
        return build.with(build.fitout().in(housed));
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
