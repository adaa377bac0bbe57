package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a promise that cannot be kept may do with the units that are on their way for it. */
class BookWaysOutTest {

    @TempDir
    private Path folder;

    private Run book(String day, String... words) {
        return Run.onBook(folder, day, words);
    }

    /** Its drives come in two days to whoever orders them today, and tomorrow to this promise: they stand in no way. */
    @Test
    void whatIsOnItsWayIsNotWaitedForAgain() throws IOException {
        Path shop = folder.resolve("shop");
        assertThat(Run.of("catalog", "new", shop.toString()).code()).isEqualTo(ExitCode.DONE);
        book("2026-11-30", "save", shop.resolve("requests/first-quote.yaml").toString(), "--customer", "Orchard Surveys", "--set", "machines=2");
        book("2026-11-30", "send", "2026-0001");
        assertThat(book("2026-11-30", "accept", "2026-0001").code()).isEqualTo(ExitCode.DONE);
        assertThat(book("2026-12-01", "allocate", "--catalog", shop.toString()).out()).contains("1: the same parts from the same lots");
        Path offers = shop.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers).replace("CPU-8,A04,own shelf,used,30.00,,4,", "CPU-8,A04,own shelf,used,30.00,,1,")
                .replaceAll("(?m)^(CPU-12,.*),10,3,", "$1,0,3,"));
        assertThat(book("2026-12-01", "allocate", "--catalog", shop.toString()).out()).contains("""
                - CPU-8: 2 wanted, 1 left
                The nearest ways out:
                - Order 1 machine instead of 2: builds from 402.00 EUR.
                - Get 1 more unit of CPU-8: builds from 804.00 EUR.

                """);
    }
}
