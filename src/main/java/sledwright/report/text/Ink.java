package sledwright.report.text;

/** Emphasis on a terminal. Colour only repeats what the words say. */
public enum Ink {
    HEAD("1"), GOOD("32"), FAIR("33"), BAD("31");

    private static final String ESCAPE = "\u001b[";

    private final String code;

    Ink(String code) {
        this.code = code;
    }

    String on(String text) {
        return ESCAPE + code + "m" + text + ESCAPE + "0m";
    }
}
