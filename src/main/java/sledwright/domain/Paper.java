package sledwright.domain;

import java.util.Arrays;
import java.util.Optional;

/** The paper that documents are laid out for. */
public enum Paper {
    /** ISO 216. */
    A4("A4", "A4"),
    /** ANSI/ASME Y14.1, size A: 8.5 x 11 inches. */
    LETTER("Letter", "letter");

    private final String label;
    private final String cssName;

    Paper(String label, String cssName) {
        this.label = label;
        this.cssName = cssName;
    }

    /** The paper with that label, whatever its case. */
    public static Optional<Paper> named(String label) {
        return Arrays.stream(values()).filter(paper -> paper.label.equalsIgnoreCase(label)).findFirst();
    }

    public String label() {
        return label;
    }

    /** Its name in a style sheet. */
    public String cssName() {
        return cssName;
    }
}
