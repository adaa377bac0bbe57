package sledwright.request;

import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Section;
import sledwright.input.Source;

/** A file of kind {@code build}. */
public final class BuildFile implements RequestFile {

    private final BuildDraft build;
    private final Draft draft;

    BuildFile(Source source, Section top) {
        build = BuildDraft.read(top);
        draft = new DraftReader(source, top).judge();
    }

    @Override
    public Optional<NamedCatalog> catalog() {
        return draft.catalog();
    }

    @Override
    public Optional<Job.Judge> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        Optional<Build> given = build.resolve(catalog, faults);
        return faults.since(before) ? Optional.empty() : given.map(known -> new Job.Judge(catalog, request, known));
    }
}
