package sledwright.rules.card;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Card;
import sledwright.domain.CardKind;
import sledwright.domain.CardWish;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** {@value #ID}: every card that the request asks for is there; one card serves one entry, and one entry is one part. */
public final class AskedCards extends Rule<Machine> {

    public static final String ID = "cards";

    /** The key of a request that it holds a build to. */
    public static final String KEY = "require.cards";

    public AskedCards() {
        super(ID, "Every card that the request asks for is there; one card serves one entry, and one entry is one part.", KEY);
    }

    /** Whether the cards serve all entries at once. */
    public static boolean allows(List<CardWish> wishes, List<Card> fitted) {
        Map<String, Integer> left = new TreeMap<>();
        fitted.forEach(card -> left.merge(card.sku(), 1, Integer::sum));
        return serve(wishes, fitted.stream().distinct().toList(), left);
    }

    private static boolean serve(List<CardWish> wishes, List<Card> parts, Map<String, Integer> left) {
        if (wishes.isEmpty()) {
            return true;
        }
        CardWish first = wishes.get(0);
        for (Card part : parts) {
            if (first.takes(part) && left.get(part.sku()) >= first.count()) {
                left.merge(part.sku(), -first.count(), Integer::sum);
                boolean served = serve(wishes.subList(1, wishes.size()), parts, left);
                left.merge(part.sku(), first.count(), Integer::sum);
                if (served) {
                    return true;
                }
            }
        }
        return false;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<CardWish> wishes = machine.request().equipment().cards();
        List<Card> fitted = List.copyOf(machine.build().fitout().cards().values());
        return allows(wishes, fitted) ? List.of() : List.of(broken("", "The machine has %s; the request asks for %s.",
                fitted.isEmpty() ? "no cards" : fitted.stream().map(Card::sku).sorted().collect(Collectors.joining(", ")),
                Sentence.joined(" and ", wishes.stream().map(AskedCards::words).toList())));
    }

    /** An entry in words. */
    public static Sentence words(CardWish wish) {
        if (wish.sku().isPresent()) {
            return Sentence.of("%s x %s", wish.count(), wish.sku().get());
        }
        boolean one = wish.count() == 1;
        if (wish.kind().orElseThrow() != CardKind.NETWORK) {
            return Sentence.of(one ? "%s controller card" : "%s controller cards", wish.count());
        }
        Sentence cards = Sentence.of(one ? "%s network card" : "%s network cards", wish.count());
        Sentence wired = wish.ports() == 0 ? cards
                : Sentence.of(wish.ports() == 1 ? "%s with %s port" : "%s with %s ports", cards, wish.ports());
        return wish.portGbit() == 0 ? wired : Sentence.of("%s of %s Gbit/s", wired, Numbers.plain(wish.portGbit()));
    }
}
