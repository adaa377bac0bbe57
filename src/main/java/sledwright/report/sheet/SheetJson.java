package sledwright.report.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.report.sheet.BoardView.Channel;
import sledwright.report.sheet.BoardView.Fitted;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Socket;
import sledwright.report.sheet.SheetView.Expected;
import sledwright.report.sheet.SheetView.Fields;
import sledwright.report.sheet.SheetView.Machine;
import sledwright.report.sheet.SheetView.Pick;
import sledwright.report.sheet.SheetView.Pulled;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Stage;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** The bench sheet as JSON; docs/json.md describes every key. */
public final class SheetJson {

    private final JsonGenerator out;

    private SheetJson(JsonGenerator out) {
        this.out = out;
    }

    public static String of(SheetView view) {
        return Json.document(out -> new SheetJson(out).write(view));
    }

    private void write(SheetView view) throws IOException {
        out.writeStringField("sheet", view.request());
        out.writeStringField("made_from", view.source().label());
        out.writeFieldName("rank");
        if (view.rank().isPresent()) {
            out.writeNumber(view.rank().getAsInt());
        } else {
            out.writeNull();
        }
        out.writeNumberField("machines", view.machines());
        string("notice", view.notice());
        strings("precautions", view.cautions());
        out.writeArrayFieldStart("sheets");
        for (Sheet sheet : view.sheets()) {
            sheet(sheet);
        }
        out.writeEndArray();
    }

    private void sheet(Sheet sheet) throws IOException {
        out.writeStartObject();
        out.writeNumberField("machines", sheet.machines());
        machine(sheet.machine());
        out.writeArrayFieldStart("picks");
        for (Pick pick : sheet.picks()) {
            out.writeStartObject();
            out.writeStringField("sku", pick.sku());
            out.writeStringField("description", pick.description());
            out.writeStringField("lot", pick.lot());
            out.writeStringField("supplier", pick.supplier());
            out.writeNumberField("units", pick.units());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("pulled");
        for (Pulled part : sheet.pulled()) {
            out.writeStartObject();
            out.writeStringField("sku", part.sku());
            out.writeStringField("description", part.description());
            out.writeNumberField("units", part.units());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeFieldName("before");
        if (sheet.before().isPresent()) {
            board(sheet.before().get());
        } else {
            out.writeNull();
        }
        out.writeFieldName("board");
        board(sheet.board());
        strings("handling", sheet.work().handling());
        out.writeArrayFieldStart("work");
        for (Stage stage : sheet.work().stages()) {
            out.writeStartObject();
            out.writeStringField("stage", stage.title());
            strings("steps", stage.steps());
            out.writeEndObject();
        }
        out.writeEndArray();
        expected(sheet.expected());
        out.writeArrayFieldStart("records");
        for (Fields fields : sheet.records()) {
            out.writeStartObject();
            out.writeStringField("title", fields.title());
            strings("fields", fields.labels());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void machine(Machine machine) throws IOException {
        out.writeStringField("platform", machine.platform());
        out.writeStringField("platform_name", machine.name());
        string("processor", machine.processor());
        out.writeNumberField("processors", machine.processors());
        string("cooling", machine.cooling());
        string("supply", machine.supply());
        out.writeNumberField("supplies", machine.supplies());
    }

    private void board(BoardView board) throws IOException {
        out.writeStartObject();
        out.writeStringField("first_slot", board.firstSlot());
        out.writeArrayFieldStart("sockets");
        for (Socket socket : board.sockets()) {
            out.writeStartObject();
            out.writeNumberField("socket", socket.number());
            string("processor", socket.processor().map(Fitted::sku));
            string("processor_mark", socket.processor().map(Fitted::mark).filter(mark -> !mark.isEmpty()));
            string("cooling", socket.heatSink().map(Fitted::sku));
            string("cooling_mark", socket.heatSink().map(Fitted::mark).filter(mark -> !mark.isEmpty()));
            out.writeArrayFieldStart("channels");
            for (Channel channel : socket.channels()) {
                channel(channel);
            }
            out.writeEndArray();
            out.writeEndObject();
        }
        out.writeEndArray();
        equipment(board.equipment());
        out.writeEndObject();
    }

    private void equipment(EquipmentView equipment) throws IOException {
        out.writeArrayFieldStart("bays");
        for (EquipmentView.Bays group : equipment.bays()) {
            for (EquipmentView.Seat seat : group.seats()) {
                out.writeStartObject();
                out.writeStringField("bay", seat.bay());
                out.writeStringField("group", group.group());
                number("socket", group.socket());
                out.writeStringField("state", seat.state().label());
                string("sku", seat.drive().map(Drive::sku));
                string("volume", Optional.of(seat.volume()).filter(volume -> !volume.isEmpty()));
                out.writeBooleanField("hot_spare", seat.hotSpare());
                string("mark", Optional.of(seat.mark()).filter(mark -> !mark.isEmpty()));
                out.writeEndObject();
            }
        }
        out.writeEndArray();
        out.writeArrayFieldStart("card_slots");
        for (EquipmentView.CardPlace place : equipment.cards()) {
            out.writeStartObject();
            out.writeStringField("slot", place.slot().name());
            out.writeNumberField("lanes", place.slot().offers().lanes());
            number("socket", place.slot().socket());
            string("riser", place.slot().riser());
            out.writeStringField("state", place.state().label());
            string("sku", place.card().map(Card::sku));
            string("mark", Optional.of(place.mark()).filter(mark -> !mark.isEmpty()));
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void number(String key, OptionalInt value) throws IOException {
        if (value.isPresent()) {
            out.writeNumberField(key, value.getAsInt());
        } else {
            out.writeNullField(key);
        }
    }

    private void channel(Channel channel) throws IOException {
        out.writeStartObject();
        out.writeStringField("channel", channel.name());
        out.writeNumberField("modules", channel.modules());
        out.writeNumberField("memory_gb", channel.capacityGb());
        out.writeArrayFieldStart("slots");
        for (Place place : channel.slots()) {
            out.writeStartObject();
            out.writeStringField("slot", place.name());
            out.writeStringField("state", place.state().label());
            string("sku", place.module().map(module -> module.sku()));
            out.writeFieldName("capacity_gb");
            if (place.module().isPresent()) {
                out.writeNumber(place.module().get().capacityGb());
            } else {
                out.writeNull();
            }
            out.writeFieldName("order");
            if (place.order().isPresent()) {
                out.writeNumber(place.order().getAsInt());
            } else {
                out.writeNull();
            }
            string("mark", Optional.of(place.mark()).filter(mark -> !mark.isEmpty()));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void expected(Expected expected) throws IOException {
        out.writeObjectFieldStart("expected");
        out.writeNumberField("processors", expected.processors());
        out.writeNumberField("cores", expected.cores());
        out.writeNumberField("modules", expected.modules());
        out.writeNumberField("memory_gb", expected.memoryGb());
        out.writeNumberField("usable_gb", Numbers.decimal(expected.usableGb()));
        out.writeStringField("memory_mode", expected.mode());
        out.writeNumberField("memory_mts", expected.memoryMts());
        out.writeNumberField("load_w", Numbers.decimal(expected.loadW()));
        out.writeFieldName("wall_w");
        if (expected.wallW().isPresent()) {
            out.writeNumber(Numbers.decimal(expected.wallW().getAsDouble()));
        } else {
            out.writeNull();
        }
        out.writeArrayFieldStart("channels");
        for (SheetView.Channel channel : expected.channels()) {
            out.writeStartObject();
            out.writeStringField("channel", channel.name());
            out.writeNumberField("modules", channel.modules());
            out.writeNumberField("memory_gb", channel.capacityGb());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("volumes");
        for (SheetView.Drives volume : expected.volumes()) {
            out.writeStartObject();
            out.writeStringField("volume", volume.volume());
            out.writeNumberField("level", volume.level());
            out.writeNumberField("drives", volume.drives());
            out.writeNumberField("hot_spares", volume.hotSpares());
            out.writeNumberField("usable_gb", Numbers.decimal(volume.usableGb()));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("cards");
        for (Map.Entry<String, String> card : expected.cards().entrySet()) {
            out.writeStartObject();
            out.writeStringField("slot", card.getKey());
            out.writeStringField("sku", card.getValue());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void string(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    private void strings(String key, List<String> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
