package sledwright.report.page;

import java.time.LocalDate;
import sledwright.domain.Catalog;
import sledwright.domain.Paper;

/**
 * What a document says of itself. Its words are English, whatever the locale of its figures.
 *
 * @param title   such as {@code Quote: render node}
 * @param subject one sentence on what it holds
 * @param author  the shop
 * @param day     the day it speaks of; stands in for the time at which it was made, so that equal answers give equal documents
 */
public record PageHead(String title, String subject, String author, LocalDate day, Paper paper) {

    /** The head of a document that a shop gives out. */
    public static PageHead of(String title, String subject, Catalog shop) {
        return new PageHead(title, subject, shop.name(), shop.today(), shop.stationery().paper());
    }
}
