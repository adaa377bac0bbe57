package sledwright.request;

import java.nio.file.Path;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Section;

/** A file of kind {@code build}. */
public final class BuildFile implements RequestFile {

    private final BuildDraft build;
    private final Draft draft;

    private BuildFile(Path file, Section top) {
        build = BuildDraft.read(top);
        draft = new DraftReader(file, top).judge();
    }

    static BuildFile read(Path file, Section top) {
        return new BuildFile(file, top);
    }

    @Override
    public Kind kind() {
        return Kind.BUILD;
    }

    @Override
    public Optional<Path> catalogFolder() {
        return draft.catalogFolder();
    }

    @Override
    public Optional<Job.Judge> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        Optional<Build> given = build.resolve(catalog, faults);
        return faults.since(before) ? Optional.empty() : given.map(known -> new Job.Judge(catalog, request, known));
    }
}
