package sledwright.samples;

import java.nio.file.Path;
import java.util.List;
import sledwright.domain.Catalog;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestFile;
import sledwright.request.RequestReader;

/** Request files that are sound. */
public final class RequestFiles {

    private RequestFiles() {
    }

    /** What a file says by itself. */
    public static RequestFile open(Path file, String... sets) {
        Faults faults = new Faults();
        RequestFile read = RequestReader.open(Source.of(file), List.of(sets), List.of(Kind.values()), faults).orElse(null);
        faults.throwIfAny();
        return read;
    }

    /** What it asks of a catalogue. */
    public static Job job(Path file, Catalog catalog, String... sets) {
        Faults faults = new Faults();
        Job job = open(file, sets).resolve(catalog, faults).orElse(null);
        faults.throwIfAny();
        return job;
    }
}
