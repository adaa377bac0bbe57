package sledwright.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Channel;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Thermal;
import sledwright.metrics.Figures;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.Quantity;
import sledwright.rules.Order;
import sledwright.rules.target.Target;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * How far a valid build is from breaking something.
 *
 * @param subject what is limited
 * @param reached the build's figure, with its unit
 * @param allowed the figure that it must reach or may not pass, with its unit
 * @param spare   the distance between the two, with its unit
 * @param share   the distance as a share of what is allowed; 0: none
 */
record Margin(String subject, Sentence reached, Sentence allowed, Sentence spare, double share) {

    private static final Comparator<Margin> TIGHTEST_FIRST = Comparator.comparingDouble(Margin::share);

    boolean isExact() {
        return share <= 0;
    }

    private static Margin of(String subject, String unit, double reached, double allowed, double spare) {
        double exact = Quantity.rounded(spare);
        return new Margin(subject, with(unit, reached), with(unit, allowed), with(unit, exact),
                allowed == 0 ? exact : exact / allowed);
    }

    private static Sentence with(String unit, double figure) {
        return Sentence.of("%s%s", Numbers.plain(figure), unit);
    }

    /** The request's least figures, the tightest first. */
    static List<Margin> ofRequirements(Order order, Build build, Figures figures) {
        Stream<Margin> machine = Target.ALL.stream().filter(target -> target.least(order.request().require()) > 0).map(target -> {
            double least = target.least(order.request().require());
            double reached = target.figure(figures);
            return of(target.noun(), target.unit(), reached, least, reached - least);
        });
        Stream<Margin> volumes = order.request().equipment().volumes().stream().filter(wish -> wish.usableGb() > 0)
                .flatMap(wish -> build.fitout().volumes().stream().filter(volume -> volume.name().equals(wish.name()))
                        .map(volume -> of("volume " + wish.name(), " GB", volume.usableGb(), wish.usableGb(),
                                volume.usableGb() - wish.usableGb())));
        return Stream.concat(machine, volumes).sorted(TIGHTEST_FIRST).toList();
    }

    /** What the request, the platform and the parts limit, the tightest first. */
    static List<Margin> ofLimits(Order order, Build build, Figures figures) {
        List<Margin> margins = new ArrayList<>();
        Limits limits = order.request().limit();
        limits.price().ifPresent(most -> {
            long price = order.price().total();
            margins.add(new Margin("price", money(order, price), money(order, most), money(order, most - price),
                    most == 0 ? 0 : (double) (most - price) / most));
        });
        limits.mostDays().ifPresent(most -> {
            int days = order.picks().stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
            margins.add(new Margin("lead time", days(days), days(most), days(most - days), most == 0 ? 0 : (double) (most - days) / most));
        });
        addPower(margins, limits, build, figures);
        addAir(margins, limits, build);
        addRanks(margins, build);
        addAddressed(margins, build);
        return margins.stream().sorted(TIGHTEST_FIRST).toList();
    }

    private static Sentence days(int number) {
        return Sentence.of("%s", Numbers.counted(number, "day"));
    }

    private static Sentence money(Order order, long minor) {
        return Sentence.of("%s", order.words(minor));
    }

    private static void addPower(List<Margin> margins, Limits limits, Build build, Figures figures) {
        double loadW = figures.loadW();
        limits.powerW().ifPresent(most -> margins.add(of("load", " W", loadW, most, most - loadW)));
        build.platform().power().budgetW()
                .ifPresent(most -> margins.add(of("load on the enclosure", " W", loadW, most, most - loadW)));
        build.supply().ifPresent(supply -> {
            double most = PowerDraw.deliverableW(supply, limits);
            String subject = supply.redundant() == 0 ? "load on the supplies"
                    : "load on the supplies with %s failed".formatted(supply.redundant());
            margins.add(of(subject, " W", loadW, most, most - loadW));
        });
    }

    private static void addAir(List<Margin> margins, Limits limits, Build build) {
        if (limits.inletC().isEmpty()) {
            return;
        }
        Thermal thermal = build.platform().thermal();
        double inletC = thermal.correctedInletC(limits.inletC().getAsDouble(), limits.altitudeM());
        String subject = inletC > limits.inletC().getAsDouble() ? "inlet air (corrected for altitude)" : "inlet air";
        build.modules().values().stream().map(MemoryModule::type).distinct()
                .flatMap(type -> thermal.row(build.processor().tdpW(), type).stream())
                .map(row -> of(subject, " C", inletC, row.maxInletC(), row.maxInletC() - inletC))
                .min(TIGHTEST_FIRST).ifPresent(margins::add);
    }

    private static void addRanks(List<Margin> margins, Build build) {
        Platform platform = build.platform();
        build.channels().stream().filter(channel -> !channel.filled().isEmpty()).flatMap(channel -> {
            ModuleType type = channel.modules().get(0).type();
            int limit = platform.memory().rankLimit(type);
            int ranks = channel.modules().stream().mapToInt(MemoryModule::logicalRanks).sum();
            return limit == Integer.MAX_VALUE ? Stream.empty()
                    : Stream.of(of("number of ranks on a channel", "", ranks, limit, limit - ranks));
        }).min(TIGHTEST_FIRST).ifPresent(margins::add);
    }

    private static void addAddressed(List<Margin> margins, Build build) {
        OptionalInt most = build.processor().maxMemoryGb();
        if (most.isPresent()) {
            int fullest = build.sockets().stream()
                    .mapToInt(channels -> channels.stream().mapToInt(Channel::capacityGb).sum()).max().orElse(0);
            margins.add(of("memory on a processor", " GB", fullest, most.getAsInt(), most.getAsInt() - fullest));
        }
    }
}
