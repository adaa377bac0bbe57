package sledwright.web.shop;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import sledwright.book.Allocated;
import sledwright.book.Signature;
import sledwright.desk.Terms;

/** Promises drawn anew that somebody looks at, so that what is kept is what was seen. Of many the last few are known. */
public final class Proposals {

    private static final int MOST = 16;

    /** One of them. */
    public record Proposal(String name, Allocated allocated) {
    }

    private final OpenShop shop;
    private final Map<String, Allocated> known = new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Allocated> eldest) {
            return size() > MOST;
        }
    };

    public Proposals(OpenShop shop) {
        this.shop = shop;
    }

    /** Draws all promises from today's stock; nothing is written. */
    public Proposal make(Signature by, Terms terms) {
        Proposal made = new Proposal(UUID.randomUUID().toString(), shop.shelf().book().allocate(shop.folder(), by, terms));
        synchronized (known) {
            known.put(made.name(), made.allocated());
        }
        return made;
    }

    /** Empty: nobody has seen one of that name for long. */
    public Optional<Allocated> named(String name) {
        synchronized (known) {
            return Optional.ofNullable(known.get(name));
        }
    }

    /** Writes it, all or nothing. */
    public void apply(Allocated allocated, Signature by) {
        shop.shelf().book().apply(allocated, shop.folder(), by);
    }
}
