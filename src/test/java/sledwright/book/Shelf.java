package sledwright.book;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.input.Source;
import sledwright.samples.Folders;

/** Answers from the small shop, and who writes them into a book. */
final class Shelf {

    static final Path SHOP = shop();
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    static final Signature ANNA = by("anna", DAY);
    static final Map<String, byte[]> PAPERS = Map.of("text.shop", "as it was\n".getBytes(StandardCharsets.UTF_8));
    static final Terms TERMS = Terms.within(Duration.ofSeconds(30));
    static final Answered NODE = answer("kind: quote\nname: Löschteich node\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
    static final Answered NOTHING = answer("kind: quote\nname: too much\nrequire: { cores: 8000 }\n");

    private Shelf() {
    }

    /** The small shop, whose quotes hold for two weeks. */
    static Path shop() {
        try {
            Path shop = Folders.copy(Folders.SHOP, Files.createTempDirectory("shop"));
            Files.writeString(shop.resolve("catalog.yaml"), "\ndocument: { valid_days: 14 }\n", StandardOpenOption.APPEND);
            return shop;
        } catch (IOException unwritten) {
            throw new UncheckedIOException(unwritten);
        }
    }

    static Answered answer(String request) {
        return answer(request, SHOP);
    }

    static Answered answer(String request, Path shop) {
        return answered(Answering.answer(Source.of("a page", request.getBytes(StandardCharsets.UTF_8)), List.of(), Optional.of(shop), TERMS));
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
}
