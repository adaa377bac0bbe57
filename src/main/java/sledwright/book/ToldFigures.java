package sledwright.book;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import sledwright.domain.DeliverBy;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Limits;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.PartChoice;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.VolumeWish;
import sledwright.domain.WorkWish;

/**
 * What a customer was told that each machine reaches.
 *
 * @param volumes name -> usable GB
 */
record ToldFigures(NewVersion.Told told, double work, Map<String, Double> volumes) {

    /** What any two promises call their request, so that alike requests are the same. */
    static final String REQUEST = "promise";

    /** At least these figures and whatever else was asked for, on the day, at any cost to the shop. */
    Request of(Request asked, LocalDate readyOn, LocalDate today) {
        Requirements least = asked.require();
        Requirements require = new Requirements(
                new ProcessorNeeds(least.processors(), Math.max(least.cores(), told.cores()),
                        Math.max(least.throughput(), told.throughput().doubleValue()), least.baseGhz(), least.allCoreGhz()),
                new MemoryNeeds(Math.max(least.memoryGb(), told.usableGb().doubleValue()),
                        Math.max(least.bandwidthGbs(), told.bandwidthGbs().doubleValue()), least.gbPerCore(), least.gbsPerCore(),
                        least.spareSlots(), least.mode(), least.populated()),
                new WorkWish(Math.max(least.work().least(), work), least.work().workload()));
        Equipment wanted = asked.equipment();
        Equipment equipment = new Equipment(wanted.volumes().stream().map(this::told).toList(), wanted.cards(), wanted.extras(),
                wanted.enclosure());
        return new Request(REQUEST, asked.machines(), require, limits(asked.limit(), readyOn, today), Goal.CHEAPEST,
                new Shortlist(1, Shortlist.PLAIN.step()),
                new PartChoice(asked.platforms(), asked.forbid(), asked.use(), asked.onHand(), equipment));
    }

    private Limits limits(Limits asked, LocalDate readyOn, LocalDate today) {
        LocalDate day = asked.by().map(DeliverBy::day).filter(last -> last.isBefore(readyOn)).orElse(readyOn);
        int left = (int) Math.max(0, ChronoUnit.DAYS.between(today, day));
        double most = Math.min(asked.powerW().orElse(Double.POSITIVE_INFINITY), told.loadW().doubleValue());
        return asked.waiting().withLeadDays(OptionalInt.of(left)).withPrice(OptionalLong.empty()).withPowerW(OptionalDouble.of(most));
    }

    private VolumeWish told(VolumeWish volume) {
        return volume.with(Math.max(volume.usableGb(), volumes.getOrDefault(volume.name(), 0.0)));
    }
}
