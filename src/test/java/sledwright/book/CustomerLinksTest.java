package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.book.store.BookPlace;

class CustomerLinksTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 18);

    private static CustomerLink link(String digest, LocalDate until) {
        return new CustomerLink(digest.repeat(43), "Orchard Surveys", "render node", "kind: quote\nrequire: { cores: 8 }\n", List.of(Leeway.read("require.cores=8..32").orElseThrow(),
                Leeway.read("workload=web-serving,fluid-flow").orElseThrow()), until, new CustomerLink.Made("anna", Instant.parse("2026-11-18T10:00:00Z")));
    }

    @Test
    void aLinkIsKeptUntilItsLastDayAndNothingIsLeftOfItThen(@TempDir Path folder) {
        BookPlace place = BookPlace.of(folder.resolve("book.db"));
        CustomerLink one = link("a", TODAY.plusDays(3));
        CustomerLink other = link("b", TODAY.plusDays(9));
        try (Book book = Book.open(place, "test")) {
            book.links().keep(one, TODAY);
            book.links().keep(other, TODAY);
        }
        try (Book book = Book.open(place, "test")) {
            assertThat(book.links().find(one.digest(), TODAY.plusDays(3))).contains(one);
            assertThat(book.links().find(one.digest(), TODAY.plusDays(4))).isEmpty();
            assertThat(book.links().find("c".repeat(43), TODAY)).isEmpty();
            assertThat(book.links().all(TODAY)).containsExactlyInAnyOrder(one, other);
            book.links().keep(link("d", TODAY.plusDays(20)), TODAY.plusDays(4));
            assertThat(book.links().find(one.digest(), TODAY)).as("it went with the next").isEmpty();
            assertThat(book.links().end("b".repeat(11))).isFalse();
            assertThat(book.links().end("")).isFalse();
            assertThat(book.links().end(other.id())).isTrue();
            assertThat(book.links().end(other.id())).isFalse();
            assertThat(book.links().all(TODAY)).extracting(CustomerLink::id).containsExactly("d".repeat(12));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "require.cores", "require.cores=", "require.cores=9..8", "require.cores=-1..8", "require.cores=1e3..2e3", "workload=A", "workload=a,,b", "x=1..2\n",
        "require.cores=1..99999999999"})
    void whatIsNoLeewayIsNone(String text) {
        assertThat(Leeway.read(text)).isEmpty();
    }

    @Test
    void aLeewayHoldsWhatLiesWithin() {
        Leeway cores = Leeway.read("require.cores=8..32.5").orElseThrow();
        assertThat(List.of("8", "8.0", "32.5", "32")).allMatch(cores::holds);
        assertThat(List.of("7.999999", "32.500001", "", "1e1", "-9", " 9", "09999999999")).noneMatch(cores::holds);
        Leeway workload = Leeway.read("workload=web-serving,fluid-flow").orElseThrow();
        assertThat(workload.holds("fluid-flow")).isTrue();
        assertThat(List.of("fluid", "web-serving,fluid-flow", "]")).noneMatch(workload::holds);
        assertThat(List.of(cores.toString(), workload.toString())).containsExactly("require.cores=8..32.5", "workload=web-serving,fluid-flow");
    }
}
