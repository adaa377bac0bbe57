package sledwright.web.shop;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.book.Reserved;
import sledwright.book.Signature;
import sledwright.desk.Desk;
import sledwright.domain.Catalog;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.web.http.RefusedException;

/** The shop as it stands: its catalogue less what the book keeps for somebody. */
public final class OpenShop {

    /** What questions were answered from when this was kept for others. */
    private record Less(ShopState whole, Reserved reserved, ShopState left) {
    }

    private final LiveCatalog catalog;
    private final BookShelf shelf;
    private volatile Less last;

    public OpenShop(LiveCatalog catalog, BookShelf shelf) {
        this.catalog = catalog;
        this.shelf = shelf;
    }

    /** Where the catalogue is read from. */
    public Path folder() {
        return catalog.folder();
    }

    public BookShelf shelf() {
        return shelf;
    }

    private Reserved reserved() {
        try {
            return shelf.ifThere().map(book -> book.reserved(Optional.empty(), new Signature("", Instant.now(), LocalDate.now())))
                    .orElse(Reserved.NOTHING);
        } catch (FaultsException unreadable) {
            // To answer from the whole stock would offer what is kept for others.
            throw RefusedException.of(503, "the book", "", "cannot be read now, so nobody knows what is kept for others: "
                    + unreadable.faults().stream().map(Fault::toString).collect(Collectors.joining("; ")));
        }
    }

    /** What questions are answered from now; a desk keeps what it has learned until something else is kept for somebody. */
    public ShopState state() {
        ShopState whole = catalog.state();
        Reserved reserved = reserved();
        if (reserved.lots().isEmpty()) {
            return whole;
        }
        Less known = last;
        if (known == null || known.whole() != whole || !known.reserved().equals(reserved)) {
            Catalog left = reserved.less(whole.catalog());
            known = new Less(whole, reserved, new ShopState(left, Desk.of(left), whole.readAt(), whole.faults()));
            last = known;
        }
        return known.left();
    }
}
