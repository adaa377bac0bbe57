package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.desk.view.Audience;
import sledwright.desk.view.BuildView;
import sledwright.domain.Energy;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;
import sledwright.report.offer.Offer.Option;
import sledwright.report.page.Wording;
import sledwright.rules.target.Target;

/** The options in columns beside what was asked for. */
public final class SideBySide {

    /** Characters of a label that stay on one line. */
    private static final int LONGEST_UNBROKEN = 18;

    /**
     * One table.
     *
     * @param heads the options' names
     * @param asks  whether any row says what was asked for
     */
    public record Part(List<String> heads, boolean asks, List<Row> rows) {
    }

    /**
     * One figure of every option.
     *
     * @param asked what the request says of it; may be empty
     */
    public record Row(String label, String asked, List<Cell> cells) {
    }

    /** @param head the option's name, for a screen that shows no columns */
    public record Cell(String head, String text) {
    }

    private final Offer offer;
    private final Wording words;
    private final List<Option> options;
    private final List<Row> rows = new ArrayList<>();

    private SideBySide(Offer offer, Wording words, List<Option> options) {
        this.offer = offer;
        this.words = words;
        this.options = options;
    }

    /** As many tables as the options need. */
    static List<Part> of(Offer offer, Wording words, Audience audience) {
        return Sheet.split(offer.options(), some -> new SideBySide(offer, words, some).part(audience), SideBySide::width);
    }

    /** The least width of a table. */
    private static double width(Part part) {
        double labels = part.rows().stream().mapToDouble(row -> Sheet.cell(row.label())).max().orElse(0);
        double asked = part.asks() ? part.rows().stream().mapToDouble(row -> Sheet.cell(row.asked())).max().orElse(0) : 0;
        double cells = 0;
        for (int option = 0; option < part.heads().size(); option++) {
            cells += Sheet.column(part.heads().get(option), part.rows().stream().map(Row::cells).toList(), option,
                    Sheet::cell);
        }
        return labels + asked + cells;
    }

    private Part part(Audience audience) {
        if (offer.answer().hasPoints()) {
            add(words.say("sides.mark"), "", option -> option.alternative().mark().map(mark -> words.say("mark." + mark)).orElse(""));
        }
        addPrices();
        addParts();
        addFigures();
        addDelivery();
        if (audience == Audience.SHOP) {
            addMargins();
        }
        return new Part(options.stream().map(option -> head(option, words)).toList(), rows.stream().anyMatch(row -> !row.asked().isEmpty()),
                List.copyOf(rows));
    }

    static String head(Option option, Wording words) {
        return words.say("quote.option", option.alternative().rank());
    }

    private void add(String label, String asked, Function<Option, String> cell) {
        String whole = label.length() <= LONGEST_UNBROKEN ? label.replace(' ', '\u00a0') : label;
        rows.add(new Row(whole, asked, options.stream().map(option -> new Cell(head(option, words), cell.apply(option))).toList()));
    }

    private void addOf(String label, String asked, Function<BuildView, String> cell) {
        add(label, asked, option -> cell.apply(option.alternative().build()));
    }

    private void addPrices() {
        Limits limit = offer.request().limit();
        // Where the price with tax is limited, that is what was asked for.
        OptionalLong asked = limit.taxed().isEmpty() ? limit.price() : limit.taxed().get().beside();
        String most = asked.isPresent() ? words.say("asked.most", words.money(offer.shop().amount(asked.getAsLong()))) : "";
        boolean changed = options.stream().anyMatch(option -> option.pays().isChanged());
        if (changed) {
            add(words.say("sum.lines"), most, option -> words.money(option.pays().price()));
            add(words.say("sides.off"), "", option -> option.pays().isChanged() ? words.money(option.pays().change().negate()) : "\u2013");
        }
        if (offer.stationery().tax().percent().isPresent()) {
            add(words.say("sides.price.before", offer.stationery().tax().name()), changed ? "" : most,
                    option -> words.money(option.pays().net()));
            add(words.say("sides.price.with", offer.stationery().tax().name()), limit.taxed().isEmpty() ? ""
                    : words.say("asked.most", words.money(offer.shop().amount(limit.taxed().get().most()))),
                    option -> words.money(option.pays().gross()));
        } else {
            add(words.say("sides.price"), changed ? "" : most, option -> words.money(option.pays().net()));
        }
        offer.request().energy().ifPresent(energy -> {
            add(years(energy), words.say("asked.kwh", perKwh(energy)), option -> electricity(option).map(words::money).orElse(""));
            add(words.say("sides.total"), "", option -> withElectricity(option).map(words::money).orElse(""));
        });
        if (offer.options().size() > 1) {
            add(words.say(offer.answer().hasPoints() ? "sides.before" : "sides.against"), "", option -> option.difference()
                    .map(difference -> words.signedMoney(offer.shop().amount(difference.extra()))).orElse("\u2013"));
        }
    }

    /** The electricity of an option and what it comes to with the price that is paid; none where the request asks for none. */
    static List<String> energy(Offer offer, Wording words, Option option) {
        SideBySide sides = new SideBySide(offer, words, List.of(option));
        return offer.request().energy().flatMap(energy -> electricity(option).map(amount -> List.of(
                "%s, %s: %s".formatted(sides.years(energy), words.say("asked.kwh", sides.perKwh(energy)), words.money(amount)),
                "%s: %s".formatted(words.say("sides.total"), PriceSums.net(words.money(withElectricity(option).orElseThrow()), offer.shop(),
                        words))))).orElse(List.of());
    }

    private String years(Energy energy) {
        return words.say(energy.years() == 1 ? "sides.energy.one" : "sides.energy", words.figure(energy.years()));
    }

    private static Optional<BigDecimal> electricity(Option option) {
        return option.alternative().weighed().energy();
    }

    private static Optional<BigDecimal> withElectricity(Option option) {
        return electricity(option).map(option.pays().net()::add);
    }

    /** A kWh can cost less than a coin. */
    private String perKwh(Energy energy) {
        BigDecimal price = BigDecimal.valueOf(energy.pricePerKwh()).movePointLeft(offer.shop().amount(0).scale());
        return "%s %s".formatted(words.measure(price.stripTrailingZeros()), offer.shop().currency().getCurrencyCode());
    }

    private void addParts() {
        Request request = offer.request();
        if (offer.options().stream().map(option -> option.alternative().build().bare().platform()).distinct().count() > 1) {
            addOf(words.say("sides.machine"), "", build -> build.bare().name());
        }
        addOf(words.say("sides.processors"), request.require().processors() > 0
                ? words.say("asked.exactly", request.require().processors()) : "",
                build -> build.bare().processorSku().map(sku -> build.bare().processors() + " \u00d7 " + sku).orElse(words.say("none")));
        addOf(words.say("sides.modules"), "", this::modules);
        addEquipment();
        Limits limit = request.limit();
        add(words.say("sides.condition"), limit.conditions().isEmpty() ? "" : new AskedWords(words, offer.shop()).conditions(limit),
                option -> option.lines().stream().map(OfferLine::goods).filter(goods -> !goods.condition().isEmpty())
                        .map(goods -> goods.shownCondition(words)).distinct().sorted().collect(Collectors.joining(", ")));
    }

    private void addEquipment() {
        EquipmentWords equipment = new EquipmentWords(words);
        Request request = offer.request();
        for (VolumeWish wish : request.equipment().volumes()) {
            addOf(equipment.label(wish.name()), equipment.asked(wish),
                    build -> equipment.cell(build.heaviest().fitout(), wish.name()));
        }
        if (options.stream().anyMatch(option -> !option.alternative().build().heaviest().fitout().cards().isEmpty())) {
            addOf(words.say("cards"), equipment.askedCards(request), build -> EquipmentWords.cards(build.heaviest().fitout()));
        }
        if (options.stream().anyMatch(option -> option.alternative().build().heaviest().fitout().housed().isPresent())) {
            addOf(words.say("enclosures"), "", build -> equipment.enclosures(build.heaviest().fitout()).orElse("\u2013"));
        }
    }

    private String modules(BuildView build) {
        return modules(build, words);
    }

    /** Such as {@code 2 x 32 GB + 4 x 8 GB}, of one machine. */
    static String modules(BuildView build, Wording words) {
        Map<Integer, Integer> memory = build.heaviest().memory();
        return memory.isEmpty() ? words.say("none") : memory.entrySet().stream()
                .map(group -> group.getValue() + " \u00d7 " + group.getKey() + " GB").collect(Collectors.joining(" + "));
    }

    /** Its modules, what they hold together, what of it is usable, and their speed. */
    public static String memory(BuildView build, Wording words) {
        String modules = modules(build, words);
        String all = words.figure(build.figures().memoryGb());
        String speed = words.figure(build.figures().speed().mts());
        return build.figures().usableGb() == build.figures().memoryGb() ? words.say("what.memory.words", modules, all, speed)
                : words.say("what.memory.usable", modules, all, words.figure(build.figures().usableGb()), speed);
    }

    private void addFigures() {
        addTarget(Target.CORES);
        addWhereAsked(Target.BASE_CLOCK);
        addWhereAsked(Target.ALL_CORE_CLOCK);
        MemoryMode mode = offer.request().require().mode();
        if (mode != MemoryMode.INDEPENDENT) {
            String label = words.say("mode." + mode.label());
            addOf(words.say("sides.mode"), label, build -> label);
        }
        addTarget(Target.MEMORY_CAPACITY);
        addWhereAsked(Target.MEMORY_PER_CORE);
        addOf(words.say("sides.speed"), "", build -> words.figure(build.figures().speed().mts()) + " MT/s");
        addTarget(Target.BANDWIDTH);
        addWhereAsked(Target.BANDWIDTH_PER_CORE);
        addOf(words.say("figure.throughput"), asked(Target.THROUGHPUT), build -> build.figures().throughputEstimated()
                ? words.say("sides.about", words.figure(build.figures().throughput())) : words.figure(build.figures().throughput()));
        if (offer.request().require().work().isOfWorkload()) {
            addTarget(Target.WORK);
        }
        addWhereAsked(Target.SPARE_SLOTS);
        Limits limit = offer.request().limit();
        addOf(words.say("sides.load"), limit.powerW().isPresent()
                ? words.say("asked.most", watts(limit.powerW().getAsDouble())) : "",
                build -> watts(build.figures().loadW()));
        if (options.stream().anyMatch(option -> option.alternative().build().figures().wallW().isPresent())) {
            addOf(words.say("sides.wall"), "", build -> build.figures().wallW().isPresent()
                    ? watts(Math.rint(build.figures().wallW().getAsDouble())) : "\u2013");
        }
    }

    private String watts(double watts) {
        return words.figure(watts) + " W";
    }

    private void addWhereAsked(Target target) {
        if (target.least(offer.request().require()) > 0) {
            addTarget(target);
        }
    }

    private void addTarget(Target target) {
        addOf(words.say("figure." + target.id()), asked(target),
                build -> figure(target, target.figure(build.figures())));
    }

    private String asked(Target target) {
        double least = target.least(offer.request().require());
        return least > 0 ? words.say("asked.least", figure(target, least)) : "";
    }

    private String figure(Target target, double figure) {
        return words.figure(figure) + target.unit();
    }

    private void addDelivery() {
        Limits limit = offer.request().limit();
        addOf(words.say("sides.lead"), limit.leadDays().isPresent()
                ? words.say("asked.most", days(limit.leadDays().getAsInt(), words)) : "", build -> days(build.leadDays(), words));
    }

    /** Days until everything is there. */
    public static String days(int days, Wording words) {
        return days == 0 ? words.say("days.none") : words.counted(days, "days").replace(' ', '\u00a0');
    }

    private void addMargins() {
        add("Parts: cost", "", option -> (option.costs().unknown() > 0 ? "at least " : "") + words.money(option.costs().cost()));
        add("Parts: margin", "", option -> option.alternative().sale().earned().filter(earned -> option.costs().unknown() == 0)
                .map(earned -> words.money(earned.margin()) + share(earned.percent())).orElse("not known"));
    }

    private String share(Optional<BigDecimal> percent) {
        return percent.map(share -> " (" + words.figure(share) + " %)").orElse("");
    }
}
