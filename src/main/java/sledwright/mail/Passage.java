package sledwright.mail;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A sentence of a mail, of which each word is understood at most once. */
final class Passage {

    /** Stands where words have been understood. */
    static final char GONE = '\u0001';

    private static final Pattern BETWEEN_RUNS = Forms.of("passage.between-runs");
    private static final Pattern BETWEEN_CLAUSES = Forms.of("passage.between-clauses");

    private final String text;
    private final String lower;
    private final StringBuilder open;
    private final int place;

    /** @param place where it begins in the mail */
    Passage(String text, int place) {
        this.text = text;
        this.place = place;
        StringBuilder small = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char letter = Character.toLowerCase(text.charAt(i));
            small.append(switch (letter) {
                case '\u00a0', '\u202f', '\t', '\r' -> ' ';
                case '\u2019', '\u2018' -> '\'';
                case '\u2013', '\u2014', '\u2011' -> '-';
                case '\u00d7', '*' -> 'x';
                case '\u2265' -> '>';
                case '\u2264' -> '<';
                default -> letter;
            });
        }
        this.lower = small.toString();
        this.open = small;
    }

    /** Words that a form found. */
    final class Hit {

        private final Matcher found;

        private Hit(Matcher found) {
            this.found = found;
        }

        int at() {
            return place + found.start();
        }

        /** What was written there; empty where that part of the form is missing. */
        String group(String name) {
            return has(name) ? found.group(name) : "";
        }

        boolean has(String name) {
            return found.group(name) != null;
        }

        BigDecimal number(String name) {
            return Numerals.value(found.group(name));
        }

        String plain(String name) {
            return Numerals.plain(number(name));
        }

        String words() {
            return written(found.start(), found.end());
        }

        /** All of the clause that it stands in. */
        String clause() {
            return written(clauseStart(found.start()), clauseEnd(found.end()));
        }

        boolean clauseHas(Pattern form) {
            return form.matcher(lower.substring(clauseStart(found.start()), clauseEnd(found.end()))).find();
        }

        /** Whether the clause has such words that are not understood yet. */
        boolean openClauseHas(Pattern form) {
            return form.matcher(open.substring(clauseStart(found.start()), clauseEnd(found.end()))).find();
        }

        /** What comes before it in its clause. */
        String before() {
            return open.substring(clauseStart(found.start()), found.start());
        }

        /** The same with what is understood of it already. */
        String allBefore() {
            return lower.substring(clauseStart(found.start()), found.start());
        }

        void take() {
            mask(found.start(), found.end());
        }

        void take(String name) {
            mask(found.start(name), found.end(name));
        }

        /** Understands words of that form in its clause, too. */
        void takeBeside(Pattern form) {
            int from = clauseStart(found.start());
            int to = clauseEnd(found.end());
            Matcher beside = form.matcher(open.substring(from, to));
            while (beside.find()) {
                mask(from + beside.start(), from + beside.end());
            }
        }
    }

    /** Shows whatever has a form, from left to right, among the words that are not understood yet. */
    void each(Pattern form, Consumer<Hit> reader) {
        int from = 0;
        Matcher found = form.matcher(open.toString());
        while (from <= open.length() && found.find(from)) {
            reader.accept(new Hit(found));
            from = Math.max(found.end(), found.start() + 1);
            found = form.matcher(open.toString());
        }
    }

    /** Whether it has words of that form, understood or not. */
    boolean has(Pattern form) {
        return form.matcher(lower).find();
    }

    /** What the first words of that form have under a name, understood or not. */
    Optional<String> first(Pattern form, String name) {
        Matcher found = form.matcher(lower);
        return found.find() ? Optional.of(found.group(name)) : Optional.empty();
    }

    /** Understands words that ask for nothing. */
    void skip(Pattern form) {
        each(form, Hit::take);
    }

    private void mask(int from, int to) {
        for (int i = from; i < to; i++) {
            open.setCharAt(i, GONE);
        }
    }

    private int clauseStart(int at) {
        Matcher ends = BETWEEN_CLAUSES.matcher(lower);
        int start = 0;
        while (ends.find() && ends.end() <= at) {
            start = ends.end();
        }
        return start;
    }

    private int clauseEnd(int at) {
        Matcher ends = BETWEEN_CLAUSES.matcher(lower);
        return ends.find(Math.min(at, lower.length())) ? ends.start() : lower.length();
    }

    private String written(int from, int to) {
        return text.substring(from, to).strip().replaceAll("\\s+", " ");
    }

    /** What was written from a place of the mail on; used with places that hits have told. */
    String clauseAt(int placeInMail) {
        int at = placeInMail - place;
        return written(clauseStart(at), clauseEnd(at));
    }

    /** What is not understood of the clause at a place of the mail. */
    String openClauseAt(int placeInMail) {
        int at = placeInMail - place;
        return open.substring(clauseStart(at), clauseEnd(at));
    }

    int at() {
        return place;
    }

    /** All of it as it was written. */
    String whole() {
        return written(0, text.length());
    }

    boolean holds(int placeInMail) {
        return placeInMail >= place && placeInMail < place + text.length();
    }

    /** Runs of words that are not understood, between those that are and the ends of clauses. */
    void eachOpenRun(RunReader reader) {
        int from = 0;
        Matcher ends = BETWEEN_RUNS.matcher(open);
        while (ends.find()) {
            reader.run(place + from, written(from, ends.start()), open.substring(from, ends.start()));
            from = ends.end();
        }
        reader.run(place + from, written(from, text.length()), open.substring(from));
    }

    /** Takes a run of words: as they were written, and in small letters. */
    interface RunReader {
        void run(int at, String written, String small);
    }
}
