package sledwright.report.page;

import java.time.LocalDate;
import sledwright.domain.Catalog;
import sledwright.domain.Paper;

/**
 * What a document says of itself.
 *
 * @param title   such as {@code Quote: render node}
 * @param subject one sentence on what it holds
 * @param author  the shop
 * @param day     the day it speaks of; stands in for the time at which it was made, so that equal answers give equal documents
 * @param language the tag of the language that its words are in
 */
public record PageHead(String title, String subject, String author, LocalDate day, Paper paper, String language) {

    private static final String ENGLISH = "en";

    /** The head of a document in English. */
    public PageHead(String title, String subject, String author, LocalDate day, Paper paper) {
        this(title, subject, author, day, paper, ENGLISH);
    }

    /** The head of a document that a shop gives out, in English whatever the locale of its figures. */
    public static PageHead of(String title, String subject, Catalog shop) {
        return new PageHead(title, subject, shop.name(), shop.today(), shop.stationery().paper());
    }

    /** The head of a document in the shop's language. */
    public static PageHead of(String title, String subject, Catalog shop, Wording words) {
        return new PageHead(title, subject, shop.name(), shop.today(), shop.stationery().paper(), words.language());
    }
}
