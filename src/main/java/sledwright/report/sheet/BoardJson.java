package sledwright.report.sheet;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.MemoryModule;
import sledwright.report.sheet.BoardView.Fitted;
import sledwright.report.text.Json;

/** A board as JSON: what sits where, and what is done there; null where nothing is. */
public record BoardJson(String firstSlot, List<SocketJson> sockets, List<Bay> bays, List<CardSlotJson> cardSlots) {

    /** A socket and its channels. */
    public record SocketJson(int socket, String processor, String processorMark, String cooling, String coolingMark,
                             List<ChannelJson> channels) {

        private static SocketJson of(BoardView.Socket socket) {
            return new SocketJson(socket.number(), sku(socket.processor()), mark(socket.processor()), sku(socket.heatSink()),
                    mark(socket.heatSink()), socket.channels().stream().map(ChannelJson::of).toList());
        }

        private static String sku(Optional<Fitted> part) {
            return part.map(Fitted::sku).orElse(null);
        }

        private static String mark(Optional<Fitted> part) {
            return part.map(Fitted::mark).map(Json::unlessEmpty).orElse(null);
        }
    }

    /** A channel and its slots. */
    public record ChannelJson(String channel, int modules, int memoryGb, List<SlotJson> slots) {

        private static ChannelJson of(BoardView.Channel channel) {
            return new ChannelJson(channel.name(), channel.modules(), channel.capacityGb(),
                    channel.slots().stream().map(SlotJson::of).toList());
        }
    }

    /** A slot for a module; {@code order} says when the module is put in. */
    public record SlotJson(String slot, String state, String sku, Integer capacityGb, Integer order, String mark) {

        private static SlotJson of(BoardView.Place place) {
            return new SlotJson(place.name(), place.state().label(), place.module().map(MemoryModule::sku).orElse(null),
                    place.module().map(MemoryModule::capacityGb).orElse(null), SheetJson.integer(place.order()),
                    Json.unlessEmpty(place.mark()));
        }
    }

    /** A bay for a drive. */
    public record Bay(String bay, String group, Integer socket, String state, @JsonUnwrapped Seated drive) {

        private static Bay of(EquipmentView.Bays group, EquipmentView.Seat seat) {
            return new Bay(seat.bay(), group.group(), SheetJson.integer(group.socket()), seat.state().label(),
                    new Seated(seat.drive().map(Drive::sku).orElse(null), Json.unlessEmpty(seat.volume()), seat.hotSpare(),
                            Json.unlessEmpty(seat.mark())));
        }
    }

    /** The drive in a bay. */
    public record Seated(String sku, String volume, boolean hotSpare, String mark) {
    }

    /** A slot for a card. */
    public record CardSlotJson(String slot, int lanes, Integer socket, String riser, String state, String sku, String mark) {

        private static CardSlotJson of(EquipmentView.CardPlace place) {
            return new CardSlotJson(place.slot().name(), place.slot().offers().lanes(), SheetJson.integer(place.slot().socket()),
                    place.slot().riser().orElse(null), place.state().label(), place.card().map(Card::sku).orElse(null),
                    Json.unlessEmpty(place.mark()));
        }
    }

    static BoardJson of(BoardView board) {
        return new BoardJson(board.firstSlot(), board.sockets().stream().map(SocketJson::of).toList(),
                board.equipment().bays().stream().flatMap(group -> group.seats().stream().map(seat -> Bay.of(group, seat))).toList(),
                board.equipment().cards().stream().map(CardSlotJson::of).toList());
    }
}
