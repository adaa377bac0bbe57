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
    public Allocated draw(Signature by, Terms terms) {
        return shop.shelf().book().allocate(shop.folder(), by, terms);
    }

    /** The name by which it is known from now on. */
    public String keep(Allocated drawn) {
        String name = UUID.randomUUID().toString();
        synchronized (known) {
            known.put(name, drawn);
        }
        return name;
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
