package sledwright.report.build;

import java.util.Map;
import sledwright.desk.view.MachineView;

/** The modules of a machine as JSON: by part number, and by slot. */
public record PopulationJson(Map<String, Integer> modules, Map<String, String> slots) {

    static PopulationJson of(MachineView machine) {
        return new PopulationJson(machine.modules(), machine.slots());
    }
}
