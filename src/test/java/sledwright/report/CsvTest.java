package sledwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.QuoteView;
import sledwright.explain.Explanation;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.report.catalog.CatalogCsv;
import sledwright.report.check.CheckCsv;
import sledwright.report.quote.QuoteCsv;
import sledwright.rules.Violation;
import sledwright.samples.Answers;
import sledwright.words.Sentence;

class CsvTest {

    private static List<Map<String, String>> read(String csv) throws IOException {
        return new CsvMapper().readerForMapOf(String.class).with(CsvSchema.emptySchema().withHeader())
                .<Map<String, String>>readValues(csv).readAll();
    }

    private static String csv(Findings findings) {
        return QuoteCsv.of(QuoteView.of(Answers.outcome(findings), Answers.SHOP, Explanation.NONE));
    }

    @Test
    void aQuoteHasARowForEachAlternative() throws IOException {
        List<Map<String, String>> rows = read(csv(Answers.proved()));
        assertThat(rows).hasSize(2);
        assertThat(rows.get(1)).containsEntry("rank", "2").containsEntry("price", "852.00").containsEntry("currency", "EUR")
                .containsEntry("processor", "P12").containsEntry("modules", "12 x R16; 4 x R16B").containsEntry("throughput", "499.2")
                .containsEntry("throughput_estimated", "true").containsEntry("load_w", "391").containsEntry("lead_days", "4");
        assertThat(rows.get(1).get("reasons")).startsWith("For 258.00 EUR more than the best: ");
    }

    @Test
    void noAlternativeLeavesTheHeader() {
        assertThat(csv(Answers.findings(Answers.ASKED, Status.IMPOSSIBLE))).startsWith("rank,request,status,").hasLineCount(1);
    }

    @Test
    void noTextIsAFormula() throws IOException {
        Findings findings = Answers.findings(Answers.rich(), Status.PROVED, Answers.order(Answers.rich(), Answers.cool()));
        assertThat(read(csv(findings)).get(0)).containsEntry("request", "'=cmd()").containsEntry("platform", "BOX");
        for (String start : List.of("=", "+", "-", "@", "\t", "\r")) {
            CheckView view = CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), true,
                    List.of(new Violation("a-rule", start + "1A", Sentence.plain("1 + 1"))));
            assertThat(read(CheckCsv.of(view)).get(0)).containsEntry("where", "'" + start + "1A").containsEntry("message", "1 + 1");
        }
    }

    @Test
    void aVerdictHasARowForEachBreach() {
        CheckView view = CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), true,
                List.of(new Violation("rank-limit", "1A", Sentence.plain("Too many, by \"far\"."))));
        assertThat(CheckCsv.of(view)).isEqualTo("rule,where,message\nrank-limit,1A,\"Too many, by \"\"far\"\".\"\n");
    }

    @Test
    void aCatalogueHasARowForEachKind() {
        assertThat(CatalogCsv.of(CatalogView.of(Answers.SHOP))).isEqualTo("""
                kind,count
                platforms,2
                "sled enclosures",0
                processors,2
                "memory modules",3
                drives,0
                cards,0
                extras,0
                "cooling kits",3
                "power supplies",1
                lots,10
                "units in stock",83
                """);
    }
}
