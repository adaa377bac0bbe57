package sledwright.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.Pick;
import sledwright.domain.Processor;
import sledwright.domain.Slot;
import sledwright.domain.Workload;
import sledwright.metrics.Figures;
import sledwright.metrics.MemorySpeed;
import sledwright.metrics.Quantity;
import sledwright.metrics.WorkDone;
import sledwright.planner.Criterion;
import sledwright.planner.Judged;
import sledwright.planner.Trade;
import sledwright.rules.Order;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.words.Measure;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sentences;

/**
 * Why a valid build is as it is, in a few short sentences. Where machines differ, the slowest speaks for the memory and the heaviest for
 * the rest.
 */
public final class Reasons {

    /** The trades that a person weighs against the price; the others only break ties. */
    private static final Set<Criterion> TOLD = EnumSet.of(Criterion.PRICE, Criterion.CORES, Criterion.BANDWIDTH, Criterion.USABLE_MEMORY);

    private Reasons() {
    }

    /**
     * First what sets the memory speed; then what holds the work back, what the heat sinks cover, why parts are there that nobody asked for
     * by name, which requirement and which limit is tight, what is waited for, and what the price comes to for each of the things that it
     * buys, as the judgement states it.
     */
    public static List<Sentence> of(Judged judged) {
        Order order = judged.order();
        Build build = judged.heaviest().build();
        Figures figures = judged.figures();
        List<Sentence> reasons = new ArrayList<>();
        reasons.add(speed(MemorySpeed.slowest(order.kinds()), figures.speed()));
        work(order, figures).ifPresent(reasons::add);
        heatSink(order, build).ifPresent(reasons::add);
        reasons.addAll(new EquipmentReasons(order, build).all());
        reasons.addAll(requirements(Margin.ofRequirements(order, build, figures)));
        limit(Margin.ofLimits(order, build, figures)).ifPresent(reasons::add);
        lastPart(order).ifPresent(reasons::add);
        judged.trades().stream().filter(trade -> TOLD.contains(trade.criterion())).map(Trade::sentence).forEach(reasons::add);
        return List.copyOf(reasons);
    }

    private static Sentence speed(Build build, MemorySpeed speed) {
        String head = "The memory runs at " + speed.mts() + " MT/s: ";
        Processor processor = build.processors().stream().min(Comparator.comparingInt(Processor::memoryMts)).orElseThrow();
        MemoryModule slowest = build.modules().values().stream().min(Comparator.comparingInt(MemoryModule::speedMts)).orElseThrow();
        return Sentence.plain(head + switch (speed.setBy()) {
            case PROCESSOR -> "%s drives no faster memory%s.".formatted(processor.sku(), slowest.speedMts() > speed.mts()
                    ? "; the modules are rated for %s".formatted(slowest.speedMts()) : "");
            case MODULE -> "%s is rated for no more%s.".formatted(slowest.sku(), processor.memoryMts() > speed.mts()
                    ? "; %s would drive %s".formatted(processor.sku(), processor.memoryMts()) : "");
            case MODULES_PER_CHANNEL -> "%s gives no more with %s; %s would drive %s."
                    .formatted(build.platform().sku(), slowestChannel(build, speed.mts()), processor.sku(), processor.memoryMts());
        });
    }

    /** What holds the work back; of a machine that is to do nothing in particular there is nothing to say. */
    private static Optional<Sentence> work(Order order, Figures figures) {
        Workload workload = order.request().require().work().workload();
        if (workload.equals(Workload.NONE)) {
            return Optional.empty();
        }
        double ofCores = Quantity.rounded(WorkDone.ofCores(figures.throughput(), figures.cores(), workload));
        Measure reached = Numbers.plain(Quantity.rounded(Math.rint(figures.work() * 10) / 10));
        return Optional.of(switch (figures.workHeldBy()) {
            case MEMORY -> Sentence.of("The cores wait for memory: they could do %s units of work, %s GB/s feed %s.",
                    Numbers.plain(Math.rint(ofCores * 10) / 10), Numbers.plain(figures.bandwidthGbs()), reached);
            case SERIAL -> Sentence.of("All cores wait for the share that runs on one: %s cores that do %s units of work do as much as"
                    + " %s that never wait.", figures.cores(), reached,
                    Numbers.plain(Math.rint(figures.cores() * ofCores / figures.throughput() * 10) / 10));
            case NOTHING -> Sentence.of("Nothing but the number and speed of its cores limits its work: %s units.", reached);
        });
    }

    private static String slowestChannel(Build build, int mts) {
        for (Channel channel : build.channels()) {
            int filled = channel.filled().size();
            for (MemoryModule module : channel.modules()) {
                if (build.platform().memory().speedMts(module.type(), module.ranks(), filled).orElse(0) == mts) {
                    return "%s of %s on a channel".formatted(Numbers.counted(filled, module.type().label()),
                            Numbers.counted(module.ranks(), "rank"));
                }
            }
        }
        throw new IllegalStateException("no channel runs at " + mts + " MT/s");
    }

    /** Slots that the kit takes on fitted sockets, what it costs, and the tamer kit that the processor is too hot for. */
    private static Optional<Sentence> heatSink(Order order, Build build) {
        CoolingKit kit = build.cooling();
        List<Slot> covered = build.platform().covered(kit).stream()
                .filter(slot -> slot.socket() < build.processors().size()).sorted().toList();
        if (covered.isEmpty()) {
            return Optional.empty();
        }
        String slots = Sentences.list(covered.stream().map(Slot::name).toList());
        Object because = build.platform().cooling().stream()
                .filter(other -> other.covers().size() < kit.covers().size() && !HeatSinkRating.allows(other, build.processor()))
                .max(Comparator.comparingDouble(CoolingKit::maxTdpW))
                .map(other -> Sentence.of("; %s covers fewer, but carries %s W and %s gives %s W", other.sku(),
                        Numbers.plain(other.maxTdpW()), build.processor().sku(), Numbers.plain(build.processor().tdpW())))
                .orElse(Sentence.plain(""));
        return Optional.of(Sentence.of("Heat sink %s%s covers %s %s, which %s empty%s.", kit.sku(), cost(order, kit.sku()),
                covered.size() == 1 ? "slot" : "slots", slots, covered.size() == 1 ? "stays" : "stay", because));
    }

    /** What all units of a part cost, in brackets. */
    static Sentence cost(Order order, String sku) {
        List<Pick> picks = order.picks().stream().filter(pick -> pick.sku().equals(sku)).toList();
        return picks.isEmpty() ? Sentence.plain("") : Sentence.of(" (%s for %s)", picks.stream().mapToInt(Pick::quantity).sum(),
                order.words(picks.stream().mapToLong(Pick::total).sum()));
    }

    private static List<Sentence> requirements(List<Margin> margins) {
        List<Sentence> sentences = new ArrayList<>();
        List<Sentence> exact = margins.stream().filter(Margin::isExact)
                .map(margin -> Sentence.of("%s (%s)", margin.subject(), margin.reached())).toList();
        if (!exact.isEmpty()) {
            sentences.add(Sentence.of("Met exactly, with nothing to spare: %s.", Sentence.list(exact)));
        }
        margins.stream().filter(margin -> !margin.isExact()).findFirst().ifPresent(margin -> sentences.add(
                Sentence.of("%s requirement is %s: %s against %s asked, %s to spare (%s %%).",
                        exact.isEmpty() ? "The tightest" : "The next tightest", margin.subject(), margin.reached(),
                        margin.allowed(), margin.spare(), Numbers.plain(percent(margin)))));
        return sentences;
    }

    private static Optional<Sentence> limit(List<Margin> margins) {
        return margins.stream().findFirst().map(margin -> margin.isExact()
                ? Sentence.of("The tightest limit is used up: %s %s of %s.", margin.subject(), margin.reached(), margin.allowed())
                : Sentence.of("The tightest limit is the %s: %s of %s, %s to spare.", margin.subject(), margin.reached(),
                        margin.allowed(), margin.spare()));
    }

    private static double percent(Margin margin) {
        return Math.rint(margin.share() * 1000) / 10;
    }

    private static Optional<Sentence> lastPart(Order order) {
        int days = order.picks().stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
        if (days == 0) {
            return Optional.empty();
        }
        List<String> parts = order.picks().stream().filter(pick -> pick.lot().leadDays() == days).map(Pick::sku).distinct().toList();
        return Optional.of(Sentence.of("The last to arrive %s %s, in %s.", parts.size() == 1 ? "is" : "are", Sentences.list(parts),
                Numbers.counted(days, "day")));
    }
}
