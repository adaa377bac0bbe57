package sledwright.mail;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sledwright.domain.Card;

/** What is understood of a mail, as it is read. */
final class MailFindings {

    private static final Set<String> LISTS = Set.of("use", "forbid", "platforms", Conditions.KEY);
    private static final String MACHINES = "machines";
    private static final String CARDS = "require.cards.";
    private static final String NAMED_CARD = "card.";

    /** A wish with its place in the mail. */
    record Found(int at, MailWish wish) {
    }

    private record Left(int at, UnreadWords words) {
    }

    /** A price of one machine; what all of them cost is known when the whole mail is. */
    private record Each(int at, String key, BigDecimal price, String words) {
    }

    private final List<Found> wishes = new ArrayList<>();
    private final List<Left> unread = new ArrayList<>();
    private final List<Each> prices = new ArrayList<>();
    private final Conditions conditions = new Conditions();
    private boolean machinesUnsaid;
    private int volumes;
    private int cards;

    void wish(String key, String value, int at, String words) {
        wish(key, value, at, words, "");
    }

    void wish(String key, String value, int at, String words, String remark) {
        wishes.add(new Found(at, new MailWish(key, value, words, remark)));
    }

    /** A part that is used, of which no wish can say how often. */
    void use(String sku, boolean counted, int at, String words) {
        wish("use", sku, at, words);
        if (counted) {
            unread(at, words, "that it is used is a wish, how often is not");
        }
    }

    void unread(int at, String words, String why) {
        unread.add(new Left(at, new UnreadWords(words, why)));
    }

    void priceOfEach(String key, BigDecimal price, int at, String words) {
        prices.add(new Each(at, key, price, words));
    }

    /** Words that are about the number of machines and do not say it; what is paid for each has no sum then. */
    void machinesUnsaid(int at, String words, String why) {
        machinesUnsaid = true;
        unread(at, words, why);
    }

    Conditions conditions() {
        return conditions;
    }

    /** The keys of one more volume begin so. */
    String nextVolume() {
        return "require.storage." + volumes++ + ".";
    }

    int volumes() {
        return volumes;
    }

    /** The keys of one more card begin so. */
    String nextCard() {
        return CARDS + cards++ + ".";
    }

    /** A card by its part number; whether it is one more or the one that is asked for by kind is known when the whole mail is. */
    void card(Card card, String count, int at, String words) {
        wish(NAMED_CARD + card.kind().label(), card.sku(), at, words, count);
    }

    boolean isEmpty() {
        return wishes.isEmpty() && prices.isEmpty() && conditions.isEmpty();
    }

    Stream<Found> found(Predicate<Found> which) {
        return new ArrayList<>(wishes).stream().filter(which);
    }

    /** Takes back a wish of which it turns out that its words say otherwise. */
    void withdraw(Found found) {
        wishes.remove(found);
    }

    /** All of it, when nothing more is to come. */
    MailReading whole() {
        conditions.wishes().forEach(found -> wishes.add(new Found(conditions.at(), found)));
        if (!conditions.isEmpty() && conditions.wishes().isEmpty()) {
            unread(conditions.at(), conditions.words(), "no condition is left then");
        }
        Optional<BigDecimal> machines = wishes.stream().filter(found -> found.wish().key().equals(MACHINES))
                .map(found -> new BigDecimal(found.wish().value())).findFirst();
        for (Each each : prices) {
            if (machines.isEmpty() && machinesUnsaid) {
                unread(each.at(), each.words(), "of how many machines?");
                continue;
            }
            BigDecimal all = each.price().multiply(machines.orElse(BigDecimal.ONE));
            wish(each.key(), Numerals.plain(all), each.at(), each.words(),
                    machines.isEmpty() ? "" : "%s machines at %s".formatted(Numerals.plain(machines.get()), Numerals.plain(each.price())));
        }
        found(found -> found.wish().key().startsWith(NAMED_CARD)).forEach(this::settleCard);
        wishes.sort(Comparator.comparing(Found::at));
        List<MailWish> settled = settled();
        unread.sort(Comparator.comparing(Left::at));
        return new MailReading(settled, unread.stream().map(Left::words).distinct().toList());
    }

    private void settleCard(Found named) {
        MailWish card = named.wish();
        withdraw(named);
        String kind = card.key().substring(NAMED_CARD.length());
        boolean askedByKind = found(found -> found.wish().key().matches("require\\.cards\\.\\d+\\.kind"))
                .anyMatch(found -> found.wish().value().equals(kind));
        if (askedByKind) {
            use(card.value(), !card.remark().isEmpty(), named.at(), card.words());
            return;
        }
        String path = nextCard();
        wish(path + "sku", card.value(), named.at(), card.words());
        if (!card.remark().isEmpty()) {
            wish(path + "count", card.remark(), named.at(), card.words());
        }
    }

    /** Keys that are said in one way; lists are put together. */
    private List<MailWish> settled() {
        Map<String, List<Found>> byKey = new LinkedHashMap<>();
        wishes.forEach(found -> byKey.computeIfAbsent(found.wish().key(), key -> new ArrayList<>()).add(found));
        List<MailWish> settled = new ArrayList<>();
        byKey.forEach((key, all) -> {
            Set<String> values = new TreeSet<>();
            all.forEach(found -> values.add(found.wish().value()));
            if (LISTS.contains(key)) {
                all.stream().map(Found::wish).distinct().forEach(settled::add);
            } else if (values.size() == 1) {
                settled.add(all.get(0).wish());
            } else {
                all.forEach(found -> unread(found.at(), found.wish().words(), "the mail says this in %s ways; which holds?"
                        .formatted(values.size())));
            }
        });
        return settled;
    }
}
