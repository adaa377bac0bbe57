package sledwright.request;

import java.nio.file.Path;
import java.util.Optional;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Source;

/** The catalogue that a request names. */
public final class NamedCatalog {

    private static final String INSTEAD = "give --catalog FOLDER instead";

    private final Field named;
    private final Source by;
    private final Optional<Path> folder;

    private NamedCatalog(Field named, Source by, Optional<Path> folder) {
        this.named = named;
        this.by = by;
        this.folder = folder;
    }

    /** Faults that show in the request alone are added; that it can name no folder at all is one only where the folder is asked for. */
    static Optional<NamedCatalog> read(Section top, Source source) {
        return top.field("catalog").map(field -> new NamedCatalog(field, source,
                source.isFile() ? source.beside(field, "folder", INSTEAD, top.faults()) : Optional.empty()));
    }

    /** Its folder, found from the request's own; empty, with a fault, when there can be no such folder. */
    public Optional<Path> folder(Faults faults) {
        return by.isFile() ? folder : by.beside(named, "folder", INSTEAD, faults);
    }
}
