package sledwright.oracle;

import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.Request;

/**
 * A case whose least price can be listed, under its own request and others.
 *
 * @param <T> its kind
 */
interface Listed<T extends Listed<T>> {

    /** More units than a machine of such a case takes of a part. */
    int PLENTY = 24;

    RandomCase that();

    /** The same under another request. */
    T with(Request other);

    /** The same from other lots. */
    T with(RandomCase other);

    /** The same where fewer machines would do. */
    T ofFewer();

    /** A part that one machine at least must hold, beyond question. */
    default Optional<String> held() {
        return Optional.empty();
    }

    String text();

    /** Minor units; the greatest number where nothing will do, and empty where that is too much to list. */
    OptionalLong least();

    default Request request() {
        return that().request();
    }

    default Catalog catalog() {
        return that().catalog();
    }

    /** The same with units enough of every lot. */
    default T plentiful() {
        int plenty = PLENTY * request().machines();
        return with(new RandomCase(that().seed(), catalog().withEachLot(lot -> lot.with(Math.max(lot.available(), plenty), lot.breaks())), request()));
    }
}
