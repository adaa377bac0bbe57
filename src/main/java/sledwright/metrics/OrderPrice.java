package sledwright.metrics;

import java.util.List;
import java.util.OptionalLong;
import sledwright.domain.Build;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Pick;

/**
 * What an order costs the customer, in minor units.
 *
 * @param parts   all picks
 * @param labour  putting the machines together
 * @param licence the customer's software, for all machines
 */
public record OrderPrice(long parts, long labour, long licence) {

    /** The price of machines whose parts are drawn as picked. */
    public static OrderPrice of(List<Build> machines, List<Pick> picks, Labour labour, Licence licence) {
        long parts = picks.stream().mapToLong(Pick::total).sum();
        long work = machines.stream().mapToLong(build -> ofLabour(labour, build)).sum();
        long software = machines.stream().mapToLong(build -> licence.of(build.cores(), build.processors().size())).sum();
        return new OrderPrice(parts, work, software);
    }

    private static long ofLabour(Labour labour, Build build) {
        return ofLabour(labour, build.modules().size()) + labour.perDrive() * build.fitout().drives().size()
                + labour.perCard() * build.fitout().cards().size();
    }

    /** Labour of one machine with a given number of modules and neither drives nor cards. */
    public static long ofLabour(Labour labour, int modules) {
        return labour.perMachine() + labour.perModule() * modules;
    }

    public long total() {
        return parts + labour + licence;
    }

    /**
     * What each unit of a figure comes to, minor units; empty where there is no unit.
     *
     * @param figure of all machines together
     */
    public OptionalLong perUnit(double figure) {
        return figure > 0 ? OptionalLong.of(Math.round(total() / figure)) : OptionalLong.empty();
    }
}
