package sledwright.request;

import java.util.List;
import sledwright.domain.Labelled;
import sledwright.input.Vocabulary;

/** What a request file asks for. */
public enum Kind implements Labelled {
    QUOTE, BUILD, ORDER, RESTOCK, UPGRADE;

    static final Vocabulary<Kind> WORDS = Vocabulary.ofAnyCase(List.of(values()), Kind::label);

    static List<String> labels(List<Kind> kinds) {
        return kinds.stream().map(Kind::label).toList();
    }
}
