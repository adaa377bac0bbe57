package sledwright.book;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.input.Source;
import sledwright.samples.Folders;

/** Answers from the small shop, and who writes them into a book. */
final class Shelf {

    static final Path SHOP = shop();
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    static final Signature ANNA = by("anna", DAY);
    static final Map<String, byte[]> PAPERS = Map.of("text.shop", "as it was\n".getBytes(StandardCharsets.UTF_8));
    static final Papers KEPT = answer -> PAPERS;
    static final Terms TERMS = Terms.within(Duration.ofSeconds(30));
    private Shelf() {
    }

    /** The small shop, whose quotes hold for two weeks. */
    static Path shop() {
        try {
            return Folders.shopOfTwoWeeks(Files.createTempDirectory("shop"));
        } catch (IOException unwritten) {
            throw new UncheckedIOException(unwritten);
        }
    }

    /** A version that nothing was searched for: each option takes a number of units of each of its lots. */
    static NewVersion version(List<Map<String, Integer>> options, LocalDate validUntil) {
        List<NewVersion.Choice> choices = new ArrayList<>();
        NewVersion.Told told = new NewVersion.Told(1, 8, BigDecimal.TEN, BigDecimal.TEN, BigDecimal.TEN, BigDecimal.TEN);
        options.forEach(lots -> choices.add(new NewVersion.Choice(choices.size() + 1, 100_00, "P", Optional.of("C"), told, 0,
                new TreeMap<>(lots).entrySet().stream().map(lot -> new NewVersion.Taken("M16", lot.getKey(), "Marsh Trade", lot.getValue(), 10_00)).toList())));
        return new NewVersion(new Asked("node", "kind: quote\n".getBytes(StandardCharsets.UTF_8), List.of(), SHOP),
                new NewVersion.Head("node", 1, "proved", Optional.of(validUntil)), new NewVersion.From("0".repeat(64), DAY, "EUR"), choices, List.of("node"),
                NewVersion.packed(PAPERS));
    }

    /** A shop of one part in lots of given numbers of units. */
    static Catalog lots(Map<String, Integer> units) {
        return CatalogReader.read(SHOP).withLots(Map.of("M16", units.entrySet().stream().map(lot -> new Lot("M16", lot.getKey(),
                "Marsh Trade", Condition.USED, new Availability(lot.getValue(), 0),
                List.of(new Lot.PriceBreak(1, 10_00, OptionalLong.empty())), false)).toList()));
    }

    static Answered answer(String request) {
        return answer(request, SHOP);
    }

    static Answered answer(String request, Path shop) {
        return answered(Answering.answer(Source.of("a page", request.getBytes(StandardCharsets.UTF_8)), List.of(), Optional.of(shop), new OnDay(Reserved.NOTHING, DAY), TERMS));
    }

    static Answered answered(Reply<Answered> reply) {
        if (reply instanceof Reply.Answered<Answered> sound) {
            return sound.answer();
        }
        throw new AssertionError(reply);
    }

    static Signature by(String who, LocalDate day) {
        return new Signature(who, Instant.parse(day + "T09:00:00Z"), day);
    }

    static Signature on(LocalDate day) {
        return by("anna", day);
    }

    /** Found once, and only where they are asked for. */
    static final class Found {
        static final Answered NODE = answer("kind: quote\nname: Löschteich node\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
        static final Answered ORDER = answer("kind: order\nname: two rooms\nlines:\n  web: { machines: 2, require: { cores: 8, memory_gb: 16 }, enclosure: own }\n"
                + "  files: { machines: 1, require: { cores: 8, memory_gb: 48 }, enclosure: own }\n");
        static final Answered NOTHING = answer("kind: quote\nname: too much\nrequire: { cores: 8000 }\n");

        private Found() {
        }
    }
}
