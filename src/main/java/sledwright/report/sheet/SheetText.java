package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.report.sheet.SheetView.Fields;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Stage;
import sledwright.report.sheet.SheetView.WholeOrder;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** The bench sheet, for people. */
public final class SheetText {

    private static final String BOX = "[ ] ";
    private static final String BLANK = " ____________";

    private final SheetView view;
    private final Page page;

    private SheetText(SheetView view, Screen screen) {
        this.view = view;
        page = new Page(screen);
    }

    public static String of(SheetView view, Screen screen) {
        return new SheetText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, SheetWords.title(view));
        view.notice().ifPresent(notice -> page.text(Ink.FAIR, notice));
        page.items(view.cautions());
        view.order().ifPresent(this::addOrder);
        view.sheets().forEach(this::addSheet);
        return page.toString();
    }

    private void addOrder(WholeOrder order) {
        TextTable table = new TextTable().column("", Fit.LEFT).column("part", Fit.LEFT).column("lot", Fit.FLEXIBLE)
                .column("from", Fit.FLEXIBLE).column("units", Fit.RIGHT).column("for", Fit.FLEXIBLE);
        order.lots().forEach(fetch -> table.row(BOX.strip(), fetch.pick().sku(), fetch.pick().lot(), fetch.pick().supplier(),
                fetch.pick().units(), SheetWords.shares(fetch)));
        page.heading("Parts to pick for the whole order, by lot").table(table);
        order.frames().forEach(frame -> page.heading(SheetWords.frame(frame)).text(Sentences.capital(SheetWords.bays(frame)) + "."));
    }

    private void addSheet(Sheet sheet) {
        page.heading(SheetWords.machines(view, sheet)).text(SheetWords.machine(sheet.machine()));
        if (!sheet.moved().picks().isEmpty()) {
            page.heading("Parts to pick" + all(sheet)).table(picks(sheet));
        }
        if (!sheet.moved().pulled().isEmpty()) {
            TextTable table = new TextTable().column("part", Fit.LEFT).column("description", Fit.FLEXIBLE).column("units", Fit.RIGHT);
            sheet.moved().pulled().forEach(part -> table.row(part.sku(), part.description(), part.units()));
            page.heading("Parts that come out" + all(sheet)).table(table);
        }
        sheet.boards().before().ifPresent(before -> {
            page.heading("Board before").table(slots(before));
            addEquipment(before.equipment(), " before");
        });
        page.heading(sheet.boards().before().isPresent() ? "Board after" : "Board").table(slots(sheet.boards().after()));
        addEquipment(sheet.boards().after().equipment(), sheet.boards().before().isPresent() ? " after" : "");
        if (sheet.boards().after().isNumbered()) {
            page.text("Numbers in brackets: the order in which the modules of a socket go in.");
        }
        if (!sheet.boards().after().firstSlot().isEmpty()) {
            page.text("First slot of a channel: %s.".formatted(sheet.boards().after().firstSlot()));
        }
        addSteps(sheet);
        page.heading("Expected at the first start").table(expected(sheet));
        page.text(SheetWords.NOTES);
        page.heading("To fill in");
        sheet.checked().records().forEach(this::addFields);
    }

    private void addEquipment(EquipmentView equipment, String when) {
        if (equipment.isBlank()) {
            return;
        }
        if (!equipment.bays().isEmpty()) {
            TextTable table = new TextTable().column("bay", Fit.LEFT).column("socket", Fit.LEFT).column("holds", Fit.FLEXIBLE)
                    .column("GB", Fit.RIGHT).column("volume", Fit.LEFT).column("", Fit.LEFT);
            equipment.bays().forEach(group -> EquipmentView.runs(group).forEach(run -> {
                EquipmentView.Seat seat = run.get(0);
                table.row(EquipmentView.name(run), number(group.socket()), seat.drive().map(Drive::sku).orElse(seat.state().label()),
                        seat.drive().map(drive -> Numbers.plain(drive.capacityGb()).toString()).orElse(""),
                        seat.volume() + (seat.hotSpare() ? ", spare" : ""), seat.mark());
            }));
            page.heading("Bays" + when).table(table);
        }
        if (!equipment.cards().isEmpty()) {
            TextTable table = new TextTable().column("slot", Fit.LEFT).column("lanes", Fit.RIGHT).column("socket", Fit.LEFT)
                    .column("riser", Fit.LEFT).column("holds", Fit.FLEXIBLE).column("", Fit.LEFT);
            equipment.cards().forEach(place -> table.row(place.slot().name(), place.slot().offers().lanes(),
                    number(place.slot().socket()), place.slot().riser().orElse(""),
                    place.card().map(Card::sku).orElse(place.state().label()), place.mark()));
            page.heading("Slots for cards" + when).table(table);
        }
    }

    private static String number(OptionalInt socket) {
        return socket.isPresent() ? String.valueOf(socket.getAsInt()) : "";
    }

    private void addFields(Fields fields) {
        page.text(fields.title() + ": " + fields.labels().stream().map(label -> label + BLANK).collect(Collectors.joining("  ")));
    }

    private static String all(Sheet sheet) {
        return sheet.machines() == 1 ? "" : ", for all %s machines".formatted(sheet.machines());
    }

    private static TextTable picks(Sheet sheet) {
        TextTable table = new TextTable().column("", Fit.LEFT).column("part", Fit.LEFT).column("description", Fit.FLEXIBLE)
                .column("lot", Fit.FLEXIBLE)
                .column("from", Fit.FLEXIBLE).column("units", Fit.RIGHT);
        sheet.moved().picks().forEach(pick -> table.row(BOX.strip(), pick.sku(), pick.description(), pick.lot(), pick.supplier(),
                pick.units()));
        return table;
    }

    /** Slots have what room there is: how many modules a channel holds is seen from them. */
    private static TextTable slots(BoardView board) {
        TextTable table = new TextTable().column("channel", Fit.LEFT);
        for (int position = 1; position <= board.slotsPerChannel(); position++) {
            table.column("slot " + position, Fit.FLEXIBLE);
        }
        board.sockets().stream().flatMap(socket -> socket.channels().stream()).forEach(channel -> {
            List<String> cells = new ArrayList<>(List.of(channel.modules() == 0 ? channel.name()
                    : "%s: %s GB".formatted(channel.name(), channel.capacityGb())));
            channel.slots().forEach(place -> cells.add(SheetWords.slot(place)));
            table.row(cells);
        });
        return table;
    }

    private void addSteps(Sheet sheet) {
        if (sheet.work().stages().isEmpty()) {
            page.gap().text(SheetWords.NOTHING_TO_DO);
        } else {
            page.heading(SheetWords.HANDLING).items(sheet.work().handling());
        }
        for (Stage stage : sheet.work().stages()) {
            page.heading(stage.title());
            stage.steps().forEach(step -> page.item(BOX, step));
        }
    }

    private static TextTable expected(Sheet sheet) {
        TextTable table = new TextTable().column("", Fit.FLEXIBLE).column("expected", Fit.FLEXIBLE).column("seen", Fit.LEFT);
        SheetWords.expected(sheet.checked().expected()).forEach(row -> table.row(row.what(), row.expected(), "______"));
        return table;
    }
}
