package sledwright.request;

import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Section;
import sledwright.input.Source;

/** A file of kind {@code upgrade}: the machine that stands, and what it shall reach. */
public final class UpgradeFile implements RequestFile {

    private final Optional<BuildDraft> build;
    private final Draft draft;
    private final double tradeIn;

    UpgradeFile(Source source, Section top) {
        build = top.requiredSection("build").map(section -> {
            BuildDraft installed = BuildDraft.read(section);
            section.finish();
            return installed;
        });
        draft = new DraftReader(source, top).upgrade();
        tradeIn = top.numberIfAny("trade_in", RequestBounds.TRADE_IN).orElse(0.0);
    }

    @Override
    public Optional<NamedCatalog> catalog() {
        return draft.catalog();
    }

    @Override
    public Optional<Job.Upgrade> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        Optional<Build> installed = build.flatMap(known -> known.resolve(catalog, faults));
        return faults.since(before) ? Optional.empty() : installed.map(known -> new Job.Upgrade(catalog, request, known, tradeIn));
    }
}
