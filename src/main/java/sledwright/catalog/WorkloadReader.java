package sledwright.catalog;

import sledwright.domain.Workload;
import sledwright.input.Section;

/** Reads what a machine is to do, in a catalogue or a request. */
public final class WorkloadReader {

    private WorkloadReader() {
    }

    /** @param name what the shop calls it; empty where a request describes it */
    public static Workload read(Section section, String name) {
        Workload workload = new Workload(name, section.numberIfAny("parallel", CatalogBounds.PARALLEL).orElse(1.0),
                section.numberIfAny("gb_per_unit", CatalogBounds.GB_PER_UNIT).orElse(0.0),
                section.numberIfAny("gb_per_core", CatalogBounds.GB_PER_CORE).orElse(0.0));
        section.finish();
        return workload;
    }
}
