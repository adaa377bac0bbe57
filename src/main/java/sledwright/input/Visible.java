package sledwright.input;

/**
 * Texts from files as a terminal may show them: what steers it, turns the direction of writing or cannot be seen stands as its code,
 * such as {@code \\u202E}.
 */
public final class Visible {

    private Visible() {
    }

    /** The text on one line. */
    public static String of(String text) {
        if (text.codePoints().noneMatch(Visible::isHidden)) {
            return text;
        }
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(character -> {
            if (isHidden(character)) {
                shown.append("\\u%04X".formatted(character));
            } else {
                shown.appendCodePoint(character);
            }
        });
        return shown.toString();
    }

    /** The same for a text of several lines. */
    public static String lines(String text) {
        return String.join("\n", text.lines().map(Visible::of).toList());
    }

    private static boolean isHidden(int character) {
        return Character.isISOControl(character) || isMark(character) || character >= 0x2028 && character <= 0x202E
                || character >= 0x2066 && character <= 0x2069 || character >= 0xE0000 && character <= 0xE007F
                || Character.getType(character) == Character.SURROGATE;
    }

    /** Marks of direction and blanks without width; joiners are left, which some scripts need. */
    private static boolean isMark(int character) {
        return character == 0x061C || character == 0x200B || character == 0x200E || character == 0x200F || character == 0xFEFF;
    }
}
