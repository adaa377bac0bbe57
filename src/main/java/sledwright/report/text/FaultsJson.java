package sledwright.report.text;

import java.util.List;
import sledwright.input.Fault;

/** What is wrong, as JSON. */
public record FaultsJson(List<FaultJson> faults) {

    /** One fault; {@code line} and {@code value} are null where there is none. */
    public record FaultJson(String place, Integer line, String value, String message) {

        private static FaultJson of(Fault fault) {
            return new FaultJson(fault.file(), fault.line() > 0 ? fault.line() : null, Json.unlessEmpty(fault.value()),
                    fault.message());
        }
    }

    public static String of(List<Fault> faults) {
        return Json.of(new FaultsJson(faults.stream().map(FaultJson::of).toList()));
    }
}
