package sledwright.request;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Value.Group;
import sledwright.input.YamlReader;

/** Reads request files. */
public final class RequestReader {

    private RequestReader() {
    }

    /**
     * Reads a request and the catalogue that it is answered from.
     *
     * @param sets    overrides of keys, as {@code path=value}
     * @param catalog the catalogue's folder; empty: the one that the file names
     * @param takes   the kinds that the caller answers
     * @throws FaultsException with every fault of the request, of the overrides and of the catalogue
     */
    public static Job read(Path file, List<String> sets, Optional<Path> catalog, Collection<Kind> takes) {
        Faults faults = new Faults();
        Optional<RequestFile> request = open(file, sets, takes, faults);
        Optional<Path> folder = catalog.or(() -> request.flatMap(RequestFile::catalogFolder));
        if (folder.isEmpty() && request.isPresent()) {
            faults.add(Place.of(file.toString()), "names no catalogue; add \"catalog: FOLDER\" or give --catalog FOLDER");
        }
        Optional<Catalog> parts = folder.flatMap(path -> CatalogReader.read(path, faults));
        Optional<Job> job = request.isPresent() && parts.isPresent()
                ? request.get().resolve(parts.get(), faults).map(Job.class::cast) : Optional.empty();
        faults.throwIfAny();
        return job.orElseThrow();
    }

    /**
     * Reads a request alone.
     *
     * @param sets overrides of keys, as {@code path=value}
     * @throws FaultsException with every fault that shows without a catalogue
     */
    public static RequestFile open(Path file, List<String> sets) {
        Faults faults = new Faults();
        Optional<RequestFile> request = open(file, sets, Kind.READ, faults);
        faults.throwIfAny();
        return request.orElseThrow();
    }

    /**
     * Reads a request alone; empty, with faults, when it cannot be read.
     *
     * @param takes the kinds that the caller answers
     */
    public static Optional<RequestFile> open(Path file, List<String> sets, Collection<Kind> takes, Faults faults) {
        Optional<Group> group = YamlReader.file(file, faults).map(read -> Overrides.apply(read, sets, faults));
        if (group.isEmpty()) {
            return Optional.empty();
        }
        Section top = Section.top(group.get(), faults);
        Optional<Kind> kind = kind(top, takes, faults);
        Optional<RequestFile> request = kind.map(known -> read(known, file, top));
        request.ifPresent(read -> top.finish());
        return request;
    }

    private static RequestFile read(Kind kind, Path file, Section top) {
        return switch (kind) {
            case QUOTE -> QuoteFile.read(file, top);
            case BUILD -> BuildFile.read(file, top);
            case UPGRADE -> UpgradeFile.read(file, top);
            case ORDER -> OrderFile.read(file, top);
            case RESTOCK -> RestockFile.read(file, top);
        };
    }

    private static Optional<Kind> kind(Section top, Collection<Kind> takes, Faults faults) {
        List<String> kinds = Kind.labels(Kind.READ);
        if (!top.has("kind")) {
            faults.add(top.place("kind"), "kind is missing; it is one of " + String.join(", ", kinds));
            return Optional.empty();
        }
        Optional<Field> field = top.field("kind");
        Optional<Kind> kind = field.flatMap(word -> word.word(Kind::named, kinds, faults));
        if (kind.isPresent() && !takes.contains(kind.get())) {
            field.get().fault("must be %s here".formatted(String.join(" or ", Kind.labels(List.copyOf(takes)))), faults);
        }
        return kind;
    }
}
