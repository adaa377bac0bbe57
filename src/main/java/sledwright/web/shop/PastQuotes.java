package sledwright.web.shop;

import java.time.LocalDate;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.web.http.RefusedException;

/** What was asked for, bought and lost over some months. */
public final class PastQuotes {

    private static final int MOST_MONTHS = 120;

    private PastQuotes() {
    }

    /**
     * @param key under which it was given
     * @throws RefusedException when there are not so many months
     */
    public static int months(String key, String given) {
        if (given.matches("[1-9][0-9]{0,2}") && Integer.parseInt(given) <= MOST_MONTHS) {
            return Integer.parseInt(given);
        }
        throw RefusedException.of(400, key, given, "must be a whole number of months from 1 to %s".formatted(MOST_MONTHS));
    }

    /** Where there is no book yet, nothing was asked for. */
    public static PastDemand of(OpenShop shop, int months, Signature by) {
        LocalDate today = by.today();
        return shop.shelf().ifThere().map(book -> book.demand(shop.folder(), months, by)).orElseGet(() -> PastDemand.nothing(today, months,
                shop.state().catalog().currency().getCurrencyCode()));
    }
}
