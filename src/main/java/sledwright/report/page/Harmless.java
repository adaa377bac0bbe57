package sledwright.report.page;

/** Texts from files, without the characters that no document can hold or that would turn round the text beside them. */
final class Harmless {

    private static final int REPLACEMENT = 0xFFFD;

    private Harmless() {
    }

    /** The text with every such character replaced by a sign that shows it. */
    static String text(String text) {
        return text.codePoints().allMatch(Harmless::allowed) ? text
                : text.codePoints().map(character -> allowed(character) ? character : REPLACEMENT)
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
    }

    private static boolean allowed(int character) {
        return character == '\n' || character == '\t' || !Character.isISOControl(character) && !turnsTextRound(character)
                && isText(character);
    }

    /** Embeddings, overrides and isolates of the Unicode bidirectional algorithm (UAX #9, section 2). */
    private static boolean turnsTextRound(int character) {
        return character >= 0x202A && character <= 0x202E || character >= 0x2066 && character <= 0x2069;
    }

    /** XML 1.0, section 2.2, has neither halves of pairs nor the last two characters of the first plane. */
    private static boolean isText(int character) {
        return !(character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE) && (character & 0xFFFE) != 0xFFFE;
    }
}
