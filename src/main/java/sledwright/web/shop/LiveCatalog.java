package sledwright.web.shop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Desk;
import sledwright.domain.Catalog;
import sledwright.input.Faults;
import sledwright.input.FaultsException;

/** A folder's catalogue as it stands: when its files have changed, it is read again, and where they have faults, the old one stays. */
public final class LiveCatalog {

    private final Path folder;
    private final Consumer<ShopState> atFirst;
    private volatile ShopState state;
    /** What the files looked like when they were last read, and when they were last looked at; by the watching thread alone. */
    private List<String> read;
    private List<String> seen;

    /**
     * @param atFirst is shown each new desk before anybody is answered at it
     * @throws FaultsException when the catalogue has faults at the start
     */
    public LiveCatalog(Path folder, Consumer<ShopState> atFirst) {
        this.folder = folder;
        this.atFirst = atFirst;
        read = looks();
        seen = read;
        state = opened(CatalogReader.read(folder));
    }

    private ShopState opened(Catalog catalog) {
        ShopState opened = new ShopState(catalog, Desk.of(catalog), Instant.now(), List.of());
        atFirst.accept(opened);
        return opened;
    }

    /** What questions are answered from now. */
    public ShopState state() {
        return state;
    }

    /** Where it is read from. */
    public Path folder() {
        return folder;
    }

    /** Looks whether files have changed; asked for again and again. Files that are still being written are left until they rest. */
    public synchronized void look() {
        List<String> now = looks();
        boolean rests = now.equals(seen);
        seen = now;
        if (now.equals(read) || !rests) {
            return;
        }
        read = now;
        Faults faults = new Faults();
        Optional<Catalog> found = CatalogReader.read(folder, faults);
        state = found.isPresent() && faults.size() == 0 ? opened(found.get()) : state.despite(faults.all());
    }

    private List<String> looks() {
        List<String> looks = new ArrayList<>();
        for (Path file : CatalogReader.files(folder)) {
            try {
                BasicFileAttributes as = Files.readAttributes(file, BasicFileAttributes.class);
                looks.add(file + " " + as.size() + " " + as.lastModifiedTime().toInstant() + " " + as.fileKey());
            } catch (IOException gone) {
                looks.add(file + " cannot be read");
            }
        }
        return looks;
    }
}
