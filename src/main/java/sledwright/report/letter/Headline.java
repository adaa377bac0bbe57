package sledwright.report.letter;

import sledwright.input.Visible;

/** A text as one line of a header: nothing in it begins another header. */
final class Headline {

    private Headline() {
    }

    /** The text with every break and control character as a blank, and blanks in a row as one. */
    static String of(String text) {
        String line = text.codePoints().map(character -> Character.isISOControl(character) || character == 0x2028 || character == 0x2029
                        || Character.getType(character) == Character.SURROGATE ? ' ' : character)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
        return Visible.of(line.replaceAll(" +", " ").strip());
    }
}
