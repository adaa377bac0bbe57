package sledwright.report.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.book.PastDemand.MonthByMonth;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.Request;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** A class of the plan asks for what was asked: read back, its request is the one that was quoted. */
class DemandYamlTest {

    static Stream<Path> quotes() throws IOException {
        try (Stream<Path> scenarios = Files.list(Path.of("scenarios"))) {
            return Stream.concat(Stream.of(Path.of("docs/examples/quote.yaml")), scenarios.sorted().toList().stream())
                    .filter(file -> file.toString().endsWith(".yaml") && read(file).contains("kind: quote")).toList().stream();
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    @ParameterizedTest
    @MethodSource("quotes")
    void aPlanAsksForWhatWasQuoted(Path file) {
        Job.Quote job = (Job.Quote) RequestReader.read(Source.of(file), List.of(), Optional.empty(), List.of(Kind.QUOTE));
        Catalog catalog = job.catalog();
        Request asked = job.request();
        AskedClass one = new AskedClass("a \"class\" \\ of its own", asked, asked.limit().mostDays().stream().boxed().findFirst(),
                new MonthByMonth(List.of(2, 1), List.of(1, 1), List.of(0, 0)), 1, 0, Optional.of(new BigDecimal("999.50")));
        PastDemand demand = new PastDemand(List.of(one), List.of(), List.of(), LocalDate.of(2026, 1, 1), LocalDate.of(2026, 3, 1), 2, "EUR");
        Map<String, String> offer = Map.of("sku", catalog.processors().get(0).sku(), "supplier", "anybody", "unit_cost", "10", "available", "5");
        String plan = DemandYaml.of(demand, List.of(offer), 2, Optional.of("1000.00"));

        DemandClass read = ((Job.Restock) RequestReader.read(Source.of("plan.yaml", plan.getBytes(StandardCharsets.UTF_8)), List.of(),
                Optional.of(CatalogSource.of(catalog)), List.of(Kind.RESTOCK))).plan().classes().get(0);

        Request again = read.request();
        assertThat(read.name()).isEqualTo(one.name());
        assertThat(again.machines()).isEqualTo(asked.machines());
        assertThat(again.require()).isEqualTo(asked.require());
        assertThat(again.equipment()).isEqualTo(asked.equipment());
        assertThat(List.of(again.platforms(), again.forbid(), again.use())).isEqualTo(List.of(asked.platforms(), asked.forbid(), asked.use()));
        assertThat(again.limit()).isEqualTo(asked.limit().waiting().withPrice(OptionalLong.empty()).withLeadDays(asked.limit().mostDays()));
    }
}
