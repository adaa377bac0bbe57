package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.samples.Folders;

/** A plan of a stock from the book is one that is answered, or none. */
class BookDemandTest {

    private static final String NOTHING = "# There is nothing to plan from: nobody has bought anything of which it is known what one costs.\n";

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void shop() throws IOException {
        shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
    }

    private Run book(String... words) {
        return Run.onBook(folder, "2026-03-02", words);
    }

    private Run demand(String... more) {
        List<String> all = new ArrayList<>(List.of("demand", "--months", "1", "--catalog", shop.toString()));
        all.addAll(List.of(more));
        return book(all.toArray(String[]::new));
    }

    private void save(String request) throws IOException {
        Path file = Files.writeString(folder.resolve("node.yaml"), request);
        assertThat(book("save", file.toString(), "--customer", "Orchard Surveys").code()).isEqualTo(ExitCode.DONE);
    }

    private void bought(String number) {
        book("send", number);
        assertThat(book("accept", number).code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void whereNobodyHasBoughtAnythingThereIsNoPlan() throws IOException {
        assertThat(demand()).isEqualTo(new Run(ExitCode.NO_VALID_BUILD, "# 0 quotes from 2026-02-03 to 2026-03-02, in 0 classes\n" + NOTHING, ""));
        save("kind: quote\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
        Run asked = demand();
        assertThat(asked.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(asked.out()).contains("  # no class, for nobody has bought it\n").endsWith(NOTHING).doesNotContain("classes:", "kind:");
        assertThat(demand("--format", "json").code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        bought("2026-0001");
        assertThat(demand().code()).isEqualTo(ExitCode.DONE);
    }

    /** Of an order only the price of the whole is known. */
    @Test
    void whatWasBoughtInAnOrderHasNoPriceOfItsOwn() throws IOException {
        save("kind: order\ncatalog: shop\nlines:\n  web: { machines: 1, require: { cores: 8 } }\n  db: { machines: 1, require: { cores: 16, memory_gb: 64 } }\n");
        bought("2026-0001");
        assertThat(demand().out()).contains("  # no class, for what one of them costs is not known: they were bought in orders or in another currency\n").endsWith(NOTHING);
    }

    /** The table may be named later; one that is named must be there. */
    @Test
    void aPlanNamesTheTableOfSuppliersWhereItIsKnown() throws IOException {
        save("kind: quote\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
        bought("2026-0001");
        Path plan = Files.writeString(folder.resolve("plan.yaml"), demand().out());
        assertThat(plan).content().contains("# supply is missing: the table of what suppliers offer; name it here, or with --set supply=FILE\n");
        assertThat(Run.of("restock", plan.toString()).err()).contains("supply is missing");
        Path supply = folder.resolve("supply.csv");
        Run absent = demand("--supply", supply.toString());
        assertThat(absent.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(absent.err()).contains("supply.csv: ");
        Files.writeString(supply, "sku,supplier,unit_cost,available\nREED-S,Fen Surplus,90,40\n");
        assertThat(Run.of("restock", plan.toString(), "--set", "supply=supply.csv", "--set", "samples=10").code()).isEqualTo(ExitCode.DONE);
        Files.writeString(plan, demand("--supply", supply.toString()).out());
        assertThat(Run.of("restock", plan.toString(), "--set", "samples=10").code()).isEqualTo(ExitCode.DONE);
    }
}
