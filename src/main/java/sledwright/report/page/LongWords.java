package sledwright.report.page;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lets browsers, too, break the words that no column would hold, by an element that nobody copies with the word. */
final class LongWords {

    /** What is not text for readers, then tags, then text. */
    private static final Pattern PIECES = Pattern.compile(
            "(?s)<!--.*?-->|<(head|script|style|svg|textarea|select|datalist|pre)\\b.*?</\\1>|<[^>]*>|[^<]+");
    private static final String LETTER = "(?:&#?\\w+;|[^\\s<>&\u00a0\u202f])";
    /** Gives no letter back, for which the stack would grow with the word. */
    private static final Pattern WORD = Pattern.compile(LETTER + "{" + (LineBreaks.LONGEST_WORD + 1) + ",}+");
    private static final Pattern PIECE = Pattern.compile(LETTER + "{" + LineBreaks.PIECE + "}\\p{M}*(?=[^\\p{M}])");

    private LongWords() {
    }

    static String breakable(String html) {
        return PIECES.matcher(html).replaceAll(found -> Matcher.quoteReplacement(
                found.group().charAt(0) == '<' ? found.group() : text(found.group())));
    }

    private static String text(String text) {
        return WORD.matcher(text).replaceAll(found -> Matcher.quoteReplacement(word(found.group())));
    }

    private static String word(String word) {
        boolean amount = word.length() <= LineBreaks.LONGEST_AMOUNT && word.codePoints().noneMatch(Character::isLetter);
        return amount ? word : PIECE.matcher(word).replaceAll("$0<wbr/>");
    }
}
