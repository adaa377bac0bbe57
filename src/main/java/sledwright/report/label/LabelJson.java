package sledwright.report.label;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.LabelView;
import sledwright.label.Meaning;
import sledwright.label.ModuleLabel;
import sledwright.label.Organisation;
import sledwright.label.Reading;
import sledwright.label.Unknown;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** Modules from labels as JSON. */
public record LabelJson(List<Module> modules) {

    /** One module, with what each field of its label says and what is not known of it. */
    public record Module(String readFrom, String label, Row row, List<Meaning> fields, List<Unknown> unknown, List<String> passedOver) {

        private static Module of(Reading reading) {
            return new Module(reading.from(), reading.label().toString(), Row.of(reading), reading.meanings(), reading.unknown(),
                    reading.passedOver());
        }
    }

    /** Its row of memory.csv; null where the label does not say it. */
    public record Row(String sku, String description, String generation, String type, @JsonUnwrapped Size size,
                      @JsonUnwrapped Speed speed) {

        private static Row of(Reading reading) {
            ModuleLabel label = reading.label();
            Optional<Organisation> organisation = label.organisation();
            return new Row(reading.sku(), label.toString(), label.speed().generation().name(),
                    label.type().map(type -> type.label()).orElse(null),
                    new Size(label.capacityGb().orElse(null), organisation.map(Organisation::ranks).orElse(null),
                            organisation.map(Organisation::logicalRanks).orElse(null), organisation.map(Organisation::width).orElse(null)),
                    new Speed(label.speed().mts(), Numbers.decimal(label.speed().volts()), null));
        }
    }

    /** Capacity and ranks. */
    public record Size(Integer capacityGb, Integer ranks, Integer logicalRanks, Integer deviceWidth) {
    }

    /** @param powerW no label says it */
    public record Speed(int speedMts, BigDecimal voltage, BigDecimal powerW) {
    }

    public static String of(LabelView view) {
        return Json.of(new LabelJson(view.readings().stream().map(Module::of).toList()));
    }
}
