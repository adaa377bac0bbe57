package sledwright.book;

import java.util.Map;
import sledwright.desk.view.OfferAnswer;

/** Makes the documents of an answer that is kept under a number. */
@FunctionalInterface
public interface Papers {

    /** The documents by what they are called, such as {@code html.customer}. */
    Map<String, byte[]> of(OfferAnswer answer);
}
