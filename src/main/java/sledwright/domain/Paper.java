package sledwright.domain;


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

    public String label() {
        return label;
    }

    /** Its name in a style sheet. */
    public String cssName() {
        return cssName;
    }
}
