package sledwright.report.build;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.Line;
import sledwright.desk.view.Lines;
import sledwright.desk.view.MachineView;
import sledwright.desk.view.Payment;
import sledwright.desk.view.SlotMap;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Lot;
import sledwright.domain.Volume;
import sledwright.metrics.Figures;
import sledwright.report.text.Page;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** The parts of a text that show one build. */
public final class BuildText {

    private static final String NONE = "-";
    private static final String TIMES = " x ";

    private BuildText() {
    }

    /** Such as {@code 2 x K2-10}. */
    public static String processors(BuildView build) {
        return build.bare().processorSku().map(sku -> build.bare().processors() + " x " + sku).orElse("none");
    }

    /** Such as {@code 12 x 16 GB = 192 GB}, of one machine. */
    public static String memory(BuildView build) {
        return memory(build, TIMES);
    }

    /** The same with another sign for times. */
    public static String memory(BuildView build, String times) {
        Map<Integer, Integer> memory = build.heaviest().memory();
        if (memory.isEmpty()) {
            return "none";
        }
        String groups = memory.entrySet().stream().map(group -> group.getValue() + times + group.getKey())
                .collect(Collectors.joining(" + "));
        return "%s GB = %s GB".formatted(groups, build.figures().memoryGb());
    }

    /** The figure, marked where it is an estimate. */
    public static String throughput(Figures figures) {
        return (figures.throughputEstimated() ? "~" : "") + Numbers.plain(figures.throughput());
    }

    /** Watts to one decimal. */
    public static String wall(Figures figures) {
        return figures.wallW().isPresent() ? Numbers.plain(Math.rint(figures.wallW().getAsDouble() * 10) / 10).toString() : NONE;
    }

    public static String money(BuildView build) {
        return build.price().map(Object::toString).orElse(NONE);
    }

    /** How many machines there are and what each is made of, in words. */
    public static String summary(BuildView build) {
        return (build.count() == 1 ? "" : build.count() + " machines, each ") + machine(build);
    }

    /** What one machine is made of, in words. */
    public static String machine(BuildView build) {
        List<String> parts = new ArrayList<>(List.of(build.bare().platform() + " (" + build.bare().name() + ")"));
        build.bare().processor().ifPresent(processor -> parts.add("%s (%s cores, %s GHz, %s GHz all cores)".formatted(processors(build),
                processor.cores(), Numbers.plain(processor.baseGhz()), Numbers.plain(processor.allCoreGhz()))));
        build.bare().cooling().ifPresent(sku -> parts.add("heat sink " + sku));
        parts.add(build.bare().supply().map(sku -> "%s x %s".formatted(build.bare().supplies(), sku))
                .orElseGet(() -> fed(build.heaviest().fitout())));
        return String.join(", ", parts);
    }

    private static String fed(Fitout fitout) {
        return fitout.housed().map(housed -> "in %s x %s with %s x %s each".formatted(housed.count(), housed.enclosure().sku(),
                housed.supply().count(), housed.supply().sku())).orElse("fed by the enclosure");
    }

    /** The drives of a machine, volume by volume. */
    static TextTable drives(Fitout fitout) {
        TextTable table = new TextTable().column("volume", Fit.LEFT).column("level", Fit.RIGHT).column("usable GB",
                Fit.RIGHT).column("bays", Fit.LEFT)
                .column("drives", Fit.FLEXIBLE).column("hot spares", Fit.FLEXIBLE);
        for (Volume volume : fitout.volumes()) {
            table.row(volume.name(), volume.level().label(), Numbers.plain(volume.usableGb()), volume.group(), counted(volume.drives()),
                    volume.hotSpares().isEmpty() ? NONE : counted(volume.hotSpares()));
        }
        return table;
    }

    static String counted(List<Drive> drives) {
        Map<String, Integer> units = new TreeMap<>();
        drives.forEach(drive -> units.merge(drive.sku(), 1, Integer::sum));
        return units.entrySet().stream().map(entry -> entry.getValue() + " x " + entry.getKey()).collect(Collectors.joining(", "));
    }

    /** Also of a build that breaks a rule: there may be no card in the slot. */
    static String driver(String driver, Fitout fitout) {
        Card card = fitout.cards().get(driver);
        return "SATA and SAS drives hang on %s.".formatted(driver.equals(Fitout.ONBOARD) ? "the board"
                : card == null ? "slot " + driver : "%s in slot %s".formatted(card.sku(), driver));
    }

    /** Adds drives, cards and extras of the heaviest machine, where it has any. */
    public static void addFitout(Page page, BuildView build) {
        Fitout fitout = build.heaviest().fitout();
        if (!fitout.volumes().isEmpty()) {
            page.heading("Drives" + which(build)).table(drives(fitout));
            fitout.driver().ifPresent(driver -> page.item("- ", driver(driver, fitout)));
        }
        if (!fitout.cards().isEmpty()) {
            TextTable table = new TextTable().column("slot", Fit.LEFT).column("card", Fit.LEFT).column("", Fit.FLEXIBLE);
            fitout.cards().forEach((slot, card) -> table.row(slot, card.sku(), card.description()));
            page.heading("Cards").table(table);
        }
        if (!fitout.extras().isEmpty()) {
            page.heading("Extras").item("- ", modules(fitout.extrasBySku()));
        }
    }

    /** The lines of the order, with the lots to pick from where they are shown, its total and what is paid for it. */
    public static TextTable parts(BuildView build, Payment pays, String currency) {
        return addPayment(parts(build, currency), tellsLots(build.lines()) ? 6 : 5, pays);
    }

    /**
     * Adds what is paid in the place of a total, and the tax on it.
     *
     * @param between columns between the first and the last
     */
    private static TextTable addPayment(TextTable table, int between, Payment pays) {
        payment(pays).forEach((label, amount) -> {
            List<String> cells = new ArrayList<>(List.of(label));
            cells.addAll(Collections.nCopies(between, ""));
            cells.add(amount.toString());
            table.row(cells);
        });
        return table;
    }

    /** What follows a total, line by line: label -> amount. */
    public static Map<String, BigDecimal> payment(Payment pays) {
        Map<String, BigDecimal> rows = new LinkedHashMap<>();
        pays.percent().ifPresent(percent -> rows.put("discount %s %%".formatted(Numbers.rate(percent)), pays.change()));
        if (pays.isChanged()) {
            rows.put(pays.agreed() ? "agreed" : "to pay", pays.net());
        }
        pays.tax().ifPresent(tax -> {
            rows.put("%s %s %%".formatted(tax.name(), Numbers.rate(tax.percent())), tax.amount());
            rows.put("with " + tax.name(), pays.gross());
        });
        return rows;
    }

    /** The lines of the order, with the lots to pick from where they are shown, and its total. */
    public static TextTable parts(BuildView build, String currency) {
        return build.price().map(price -> lines(build.lines(), currency, "total", String.valueOf(build.leadDays()), price))
                .orElseGet(() -> lines(build.lines(), currency));
    }

    /** Lines of an order and their sum. */
    public static TextTable lines(List<Line> lines, String currency, String sum, String days, BigDecimal amount) {
        TextTable table = lines(lines, currency);
        List<String> cells = new ArrayList<>(List.of(sum));
        cells.addAll(Collections.nCopies(tellsLots(lines) ? 3 : 2, ""));
        cells.addAll(List.of(days, "", "", amount.toString()));
        table.row(cells);
        return table;
    }

    /** Lines of an order, with the lots to pick from where they are shown. */
    public static TextTable lines(List<Line> lines, String currency) {
        boolean lots = tellsLots(lines);
        TextTable table = new TextTable().column("part", Fit.LEFT);
        if (lots) {
            table.column("lot", Fit.FLEXIBLE).column("from", Fit.FLEXIBLE);
        } else {
            table.column("", Fit.FLEXIBLE);
        }
        table.column("condition", Fit.LEFT).column("days", Fit.RIGHT).column("units", Fit.RIGHT).column("each", Fit.RIGHT)
                .column(currency, Fit.RIGHT);
        for (Line line : lines) {
            List<String> cells = new ArrayList<>(List.of(line.sku()));
            line.source().ifPresentOrElse(source -> {
                cells.addAll(lots ? List.of(source.lot(), source.supplier()) : List.of(line.description()));
                cells.addAll(List.of(
                        lots || !Lot.OWN.contains(source.lot()) ? source.condition() : "yours", String.valueOf(source.leadDays())));
            }, () -> cells.addAll(lots ? List.of("", line.description(), "", "") : List.of(line.description(), "", "")));
            cells.addAll(List.of(String.valueOf(line.quantity()), line.unitPrice().toString(), line.total().toString()));
            table.row(cells);
        }
        return table;
    }

    private static boolean tellsLots(List<Line> lines) {
        return lines.stream().anyMatch(Line::tellsLot);
    }

    /** The slots of one machine: a line for each channel, socket by socket. */
    static TextTable slots(SlotMap map) {
        TextTable table = new TextTable().column("channel", Fit.LEFT);
        int depth = map.sockets().get(0).get(0).cells().size();
        for (int position = 1; position <= depth; position++) {
            table.column("slot " + position, Fit.LEFT);
        }
        for (List<SlotMap.Row> socket : map.sockets()) {
            for (SlotMap.Row row : socket) {
                List<String> cells = new ArrayList<>(List.of(row.name()));
                row.cells().forEach(cell -> cells.add(cell.name() + " " + content(cell)));
                table.row(cells);
            }
        }
        return table;
    }

    private static String content(SlotMap.Cell cell) {
        String mark = cell.covered() ? "covered" : cell.fitted() ? "empty" : "no processor";
        return cell.holds().isEmpty() ? mark : cell.covered() || !cell.fitted() ? cell.holds() + " " + mark : cell.holds();
    }

    /** Adds the slots of the heaviest machine and, where machines differ, what each holds. */
    public static void addSlots(Page page, BuildView build) {
        SlotMap map = build.heaviest().map();
        String side = map.fillSide().isEmpty() ? "" : " (first slot: %s)".formatted(map.fillSide());
        page.heading("Slots" + which(build) + side).table(slots(map));
        if (build.machines().size() > 1) {
            page.heading("The machines differ in part numbers");
            build.machines().forEach(machine -> page.item("- ",
                    "%s: %s".formatted(Numbers.counted(machine.count(), "machine"), parts(machine))));
        }
        addFitout(page, build);
    }

    private static String which(BuildView build) {
        return build.machines().size() == 1 ? "" : " of the heaviest machine";
    }

    private static String parts(MachineView machine) {
        List<Drive> drives = machine.fitout().drives();
        String modules = modules(machine.modules()).replace("; ", ", ");
        return drives.isEmpty() ? modules : modules.isEmpty() ? counted(drives) : modules + "; " + counted(drives);
    }

    /** The modules of a machine on one line. */
    public static String modules(Map<String, Integer> modules) {
        return modules(modules, TIMES);
    }

    /** The same with another sign for times. */
    public static String modules(Map<String, Integer> modules, String times) {
        return modules.entrySet().stream().map(entry -> entry.getValue() + times + entry.getKey()).collect(Collectors.joining("; "));
    }

    /** What an amount consists of, as far as it does. */
    public static List<String> shares(BigDecimal parts, BigDecimal labour, BigDecimal licence) {
        return Stream.of(Map.entry("parts", parts), Map.entry("labour", labour), Map.entry("licence", licence))
                .filter(share -> share.getValue().signum() != 0)
                .map(share -> "%s %s".formatted(share.getKey(), share.getValue())).toList();
    }
}
