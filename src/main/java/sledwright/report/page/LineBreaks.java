package sledwright.report.page;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Where a line of paper may end: behind blanks and hyphens, between the letters of scripts that write no blanks, and within words that
 * no column would hold; never within an amount or a unit.
 */
final class LineBreaks implements FSTextBreaker {

    /** Letters of a word that stay together. */
    static final int LONGEST_WORD = 20;
    /** Letters of each piece of a longer word. */
    static final int PIECE = 10;
    /** Digits and their signs without a letter are an amount up to here. */
    static final int LONGEST_AMOUNT = 30;
    private static final int ASCII = 0x80;

    /** What of texts is left behind a cut: it is asked for again on its own, line by line, when it may be no long word any more. */
    private final Set<String> rests = new HashSet<>();
    private List<Integer> breaks = List.of();
    private int given;

    @Override
    public void setText(String text) {
        breaks = of(text, rests);
        given = 0;
    }

    @Override
    public int next() {
        return given < breaks.size() ? breaks.get(given++) : BreakIterator.DONE;
    }

    /** What stays on one line each, blanks at the ends left out. */
    static List<String> pieces(String text) {
        List<String> pieces = new ArrayList<>();
        int from = 0;
        for (int end : of(text, new HashSet<>())) {
            pieces.add(text.substring(from, end).strip());
            from = end;
        }
        return pieces;
    }

    /** Every place where a line may end, the end of the text among them. */
    private static List<Integer> of(String text, Set<String> rests) {
        BreakIterator lines = BreakIterator.getLineInstance(Locale.ROOT);
        lines.setText(text);
        List<Integer> all = new ArrayList<>();
        int from = 0;
        for (int at = lines.next(); at != BreakIterator.DONE; at = lines.next()) {
            if (at == text.length() || endsLine(text.charAt(at - 1), text.charAt(at))) {
                within(text, from, at, all, rests);
                all.add(at);
                from = at;
            }
        }
        return all;
    }

    private static boolean endsLine(char before, char behind) {
        return Character.isWhitespace(before) || before == '-' || before == '\u00ad' || before == '\u200b' || before == '\u2013'
                || before >= ASCII && Character.isLetter(before) && Character.isLetter(behind)
                || behind >= ASCII && Character.isLetter(behind) && Character.isLetter(before);
    }

    /** The places within the words of a piece of text that are too long. */
    private static void within(String text, int from, int to, List<Integer> all, Set<String> rests) {
        int start = from;
        for (int at = from; at <= to; at++) {
            if (at == to || Character.isWhitespace(text.charAt(at)) || Character.isSpaceChar(text.charAt(at))) {
                cut(text, start, at, all, rests);
                start = at + 1;
            }
        }
    }

    private static void cut(String text, int from, int to, List<Integer> all, Set<String> rests) {
        boolean amount = text.substring(from, Math.max(from, to)).codePoints().noneMatch(Character::isLetter);
        boolean rest = from == 0 && rests.contains(text);
        if (!rest && to - from <= (amount ? LONGEST_AMOUNT : LONGEST_WORD)) {
            return;
        }
        for (int at = from + PIECE; at < to; at += PIECE) {
            while (at < to && belongsToLast(text.charAt(at))) {
                at++;
            }
            if (at < to) {
                all.add(at);
                rests.add(text.substring(at));
            }
        }
    }

    private static boolean belongsToLast(char character) {
        int type = Character.getType(character);
        return Character.isLowSurrogate(character) || type == Character.NON_SPACING_MARK || type == Character.COMBINING_SPACING_MARK;
    }
}
