package sledwright.catalog.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.catalog.CatalogTable;
import sledwright.input.Vocabulary;

/**
 * How a supplier's list is read into one of our tables.
 *
 * @param sheet     the sheet of a workbook; empty: the only one
 * @param separator what separates the cells of CSV; empty: guessed
 * @param header    the rows of the header; empty: found by its headings
 * @param rules     the columns that each row of theirs has once
 * @param breaks    the columns of prices that hold from some units on; empty: a row of theirs is one of ours
 * @param replaces  whose stock the list is the whole of; empty: it says nothing of what it does not name
 */
record Mapping(Optional<String> sheet, Optional<Character> separator, Optional<HeaderRows> header, Notation notation,
               List<ColumnRule> rules, List<PriceBreak> breaks, Optional<Whole> replaces) {

    /**
     * How a list writes figures and days.
     *
     * @param decimal     comma or point; empty: as the file's kind has it
     * @param thousands   what separates thousands; empty: nothing does
     * @param datePattern how dates are written; empty: as 2025-03-31
     */
    record Notation(Optional<Character> decimal, Optional<Character> thousands, Optional<String> datePattern) {
    }

    /** A price in a column of its own: it holds from a given number of units on. */
    record PriceBreak(int from, ColumnRule price) {
    }

    /** What a list leaves nothing out of: all that its suppliers have, or all that is in its lots. */
    enum Whole {
        SUPPLIER, LOTS;

        static final Vocabulary<Whole> WORDS = Vocabulary.of(List.of(values()), whole -> whole.name().toLowerCase(Locale.ROOT));
    }

    /** From the first to the last row of a header, as the file numbers them. */
    record HeaderRows(int first, int last) {
    }

    Mapping {
        rules = List.copyOf(rules);
        breaks = List.copyOf(breaks);
    }

    /** Our own headings. */
    static Mapping own(CatalogTable table) {
        return new Mapping(Optional.empty(), Optional.empty(), Optional.empty(),
                new Notation(Optional.empty(), Optional.empty(), Optional.empty()),
                table.order().stream().map(column -> ColumnRule.of(column, column)).toList(), List.of(), Optional.empty());
    }

    /** The headings that a list must have. */
    List<String> headings() {
        return Stream.concat(rules.stream(), breaks.stream().map(PriceBreak::price)).flatMap(rule -> rule.heading().stream()).toList();
    }
}
