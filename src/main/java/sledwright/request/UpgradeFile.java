package sledwright.request;

import java.nio.file.Path;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Section;

/** A file of kind {@code upgrade}: the machine that stands, and what it shall reach. */
public final class UpgradeFile implements RequestFile {

    private final Optional<BuildDraft> build;
    private final Draft draft;
    private final double tradeIn;

    private UpgradeFile(Path file, Section top) {
        build = top.requiredSection("build").map(section -> {
            BuildDraft installed = BuildDraft.read(section);
            section.finish();
            return installed;
        });
        draft = new DraftReader(file, top).upgrade();
        tradeIn = top.numberIfAny("trade_in", RequestBounds.TRADE_IN).orElse(0.0);
    }

    static UpgradeFile read(Path file, Section top) {
        return new UpgradeFile(file, top);
    }

    @Override
    public Kind kind() {
        return Kind.UPGRADE;
    }

    @Override
    public Optional<Path> catalogFolder() {
        return draft.catalogFolder();
    }

    @Override
    public Optional<Job.Upgrade> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        Optional<Build> installed = build.flatMap(known -> known.resolve(catalog, faults));
        return faults.since(before) ? Optional.empty() : installed.map(known -> new Job.Upgrade(catalog, request, known, tradeIn));
    }
}
