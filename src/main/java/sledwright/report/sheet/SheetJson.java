package sledwright.report.sheet;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/**
 * The bench sheet as JSON; docs/json.md describes every key.
 *
 * @param notice null where there is none
 */
public record SheetJson(@JsonUnwrapped Head head, String notice, List<String> precautions, List<MachineSheet> sheets,
                        @JsonUnwrapped OrderSheetsJson order) {

    /** @param rank null where it is of no alternative */
    public record Head(String sheet, String madeFrom, Integer rank, int machines) {
    }

    /** The sheet of machines that are alike. */
    public record MachineSheet(int machines, @JsonUnwrapped WhichJson which, @JsonUnwrapped Frame frame,
                               @JsonUnwrapped SheetView.Moved moved, @JsonUnwrapped Boards boards, @JsonUnwrapped Work bench,
                               @JsonUnwrapped Checked checked) {

        private static MachineSheet of(SheetView.Sheet sheet) {
            return new MachineSheet(sheet.machines(), WhichJson.of(sheet.which()), Frame.of(sheet.machine()), sheet.moved(),
                    new Boards(sheet.boards().before().map(BoardJson::of).orElse(null), BoardJson.of(sheet.boards().after())),
                    Work.of(sheet.work()),
                    new Checked(ExpectedJson.of(sheet.checked().expected()), sheet.checked().records().stream().map(Fields::of).toList()));
        }
    }

    /** A machine of an order; null where it is none, and the last two where it is no sled. */
    public record WhichJson(String line, Integer machine, Integer enclosure, Integer bay) {

        private static WhichJson of(Optional<SheetView.Which> which) {
            Optional<SheetView.Berth> berth = which.flatMap(SheetView.Which::berth);
            return new WhichJson(which.map(SheetView.Which::line).orElse(null), which.map(SheetView.Which::number).orElse(null),
                    berth.map(SheetView.Berth::enclosure).orElse(null), berth.map(SheetView.Berth::bay).orElse(null));
        }
    }

    /** A machine without its memory; null where nothing of the kind is fitted. */
    public record Frame(String platform, String platformName, String processor, int processors, String cooling, String supply,
                        int supplies) {

        private static Frame of(SheetView.Machine machine) {
            return new Frame(machine.bare().platform(), machine.bare().name(), machine.bare().processorSku().orElse(null),
                    machine.bare().processors(),
                    machine.bare().cooling().orElse(null), machine.bare().supply().orElse(null), machine.bare().supplies());
        }
    }

    /** The board when the work is done, and before it; that is null where machines are new. */
    public record Boards(BoardJson before, BoardJson board) {
    }

    /** What the bench does. */
    public record Work(List<String> handling, List<StageJson> work) {

        private static Work of(SheetView.Work work) {
            return new Work(work.handling(), work.stages().stream().map(stage -> new StageJson(stage.title(), stage.steps())).toList());
        }
    }

    /** Steps that belong together. */
    public record StageJson(String stage, List<String> steps) {
    }

    /** What the machine must then say of itself, and what is written down. */
    public record Checked(ExpectedJson expected, List<Fields> records) {
    }

    /** Lines to fill in by hand. */
    public record Fields(String title, List<String> fields) {

        private static Fields of(SheetView.Fields record) {
            return new Fields(record.title(), record.labels());
        }
    }

    /** What the machine must say of itself; {@code wallW} is null where it is not known. */
    public record ExpectedJson(@JsonUnwrapped Counts counts, @JsonUnwrapped Memory memory, BigDecimal loadW, BigDecimal wallW,
                               List<ChannelSize> channels, List<VolumeSize> volumes, List<CardIn> cards) {

        private static ExpectedJson of(SheetView.Expected expected) {
            return new ExpectedJson(new Counts(expected.processors(), expected.cores(), expected.memory().modules(),
                    expected.memory().capacityGb()),
                    new Memory(Numbers.decimal(expected.memory().usableGb()), expected.memory().mode(), expected.memory().mts()),
                    Numbers.decimal(expected.loadW()), expected.wallW().stream().mapToObj(Numbers::decimal).findFirst().orElse(null),
                    expected.memory().channels().stream().map(ChannelSize::of).toList(),
                    expected.volumes().stream().map(VolumeSize::of).toList(),
                    expected.cards().entrySet().stream().map(CardIn::of).toList());
        }
    }

    /** What is counted. */
    public record Counts(int processors, int cores, int modules, int memoryGb) {
    }

    /** How the memory runs. */
    public record Memory(BigDecimal usableGb, String memoryMode, int memoryMts) {
    }

    /** What a channel holds. */
    public record ChannelSize(String channel, int modules, int memoryGb) {

        private static ChannelSize of(SheetView.Channel channel) {
            return new ChannelSize(channel.name(), channel.modules(), channel.capacityGb());
        }
    }

    /** What a volume holds. */
    public record VolumeSize(String volume, int level, int drives, int hotSpares, BigDecimal usableGb) {

        private static VolumeSize of(SheetView.Drives volume) {
            return new VolumeSize(volume.volume(), volume.level(), volume.drives(), volume.hotSpares(), Numbers.decimal(volume.usableGb()));
        }
    }

    /** A card in its slot. */
    public record CardIn(String slot, String sku) {

        private static CardIn of(Map.Entry<String, String> card) {
            return new CardIn(card.getKey(), card.getValue());
        }
    }

    public static String of(SheetView view) {
        return Json.of(new SheetJson(new Head(view.request(), view.source().label(), integer(view.rank()), view.machines()),
                view.notice().orElse(null), view.cautions(), view.sheets().stream().map(MachineSheet::of).toList(),
                OrderSheetsJson.of(view.order())));
    }

    static Integer integer(OptionalInt value) {
        return value.isPresent() ? value.getAsInt() : null;
    }
}
