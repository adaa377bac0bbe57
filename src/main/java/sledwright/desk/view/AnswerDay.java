package sledwright.desk.view;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * The day of an answer and how its prices stand to it.
 *
 * @param today      the day of the answer
 * @param pricedOn   the day of the prices
 * @param validUntil the last day on which the answer holds as an offer; empty where the shop names none
 * @param stale      whether the prices are older than the shop offers them
 * @param warnings   what the shop should know before it offers this; empty for a customer
 */
public record AnswerDay(LocalDate today, LocalDate pricedOn, Optional<LocalDate> validUntil, boolean stale, List<Sentence> warnings) {

    public AnswerDay {
        warnings = List.copyOf(warnings);
    }

    /** @param drawn what the answer takes from lots */
    static AnswerDay of(Catalog shop, Stream<Pick> drawn) {
        LocalDate today = shop.today();
        long age = ChronoUnit.DAYS.between(shop.pricedOn(), today);
        boolean stale = shop.house().staleAfterDays().isPresent() && age > shop.house().staleAfterDays().getAsInt();
        List<Sentence> warnings = new ArrayList<>();
        if (stale) {
            warnings.add(Sentence.plain("The prices are of %s and %s old; this shop offers none that are older than %s.".formatted(
                    shop.pricedOn(), Numbers.counted((int) age, "day"), Numbers.counted(shop.house().staleAfterDays().getAsInt(), "day"))));
        }
        drawn.map(Pick::lot).filter(lot -> lot.stock().lastDay().filter(last -> last.isBefore(today)).isPresent()).distinct()
                .map(AnswerDay::over).sorted().forEach(over -> warnings.add(Sentence.plain(over)));
        return new AnswerDay(today, shop.pricedOn(), shop.stationery().validDays().stream().mapToObj(today::plusDays).findFirst(), stale,
                warnings);
    }

    private static String over(Lot lot) {
        return "Lot %s of %s was offered until %s: ask %s before it is promised.".formatted(lot.lot(), lot.sku(),
                lot.stock().lastDay().orElseThrow(), lot.supplier());
    }

    /** The same with more that the shop should know. */
    AnswerDay warning(List<Sentence> more) {
        List<Sentence> all = new ArrayList<>(warnings);
        all.addAll(more);
        return new AnswerDay(today, pricedOn, validUntil, stale, all);
    }

    /** Without what the shop alone should know. */
    AnswerDay forCustomers() {
        return new AnswerDay(today, pricedOn, validUntil, stale, List.of());
    }

    /** Why a customer gets no answer where the prices are stale, as a clause. */
    public String refusal() {
        return "the prices are of %s, older than this shop offers them".formatted(pricedOn);
    }

    /** The day on which something arrives that takes a given number of days. */
    public LocalDate in(int leadDays) {
        return today.plusDays(leadDays);
    }
}
