package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.book.Book;
import sledwright.book.CustomerLink;
import sledwright.book.store.BookPlace;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

class BookCommandsTest {

    @TempDir
    Path folder;

    private Path request;
    private Path shop;

    @BeforeEach
    void write() throws IOException {
        shop = Folders.shopOfTwoWeeks(folder.resolve("shop"));
        request = Folders.nodeOf(folder);
    }

    private Run book(String... words) {
        return Run.onBook(folder, "2026-03-02", words);
    }

    private Map<String, String> environment() {
        return Run.anna(folder);
    }

    private byte[] shown(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<String> all = new ArrayList<>(List.of("book", "show", "2026-0001"));
        all.addAll(List.of(words));
        assertThat(Run.into(out, environment(), false, all.toArray(String[]::new)).code()).isEqualTo(ExitCode.DONE);
        return out.toByteArray();
    }

    private List<byte[]> papers() {
        List<byte[]> papers = new ArrayList<>();
        for (String reader : List.of("shop", "customer")) {
            for (String format : List.of("text", "json", "csv", "html", "pdf")) {
                papers.add(shown("--format", format, "--for", reader));
            }
        }
        return papers;
    }

    private Run saved() {
        return book("save", request.toString(), "--customer", "Orchard Surveys", "--note", "in May");
    }

    /** What the shop's catalogue says later, and whether it is there at all, changes nothing. */
    @Test
    void whatWasSavedIsShownByteForByte() throws IOException {
        assertThat(saved()).isEqualTo(new Run(ExitCode.DONE, "2026-0001\n", ""));
        assertThat(folder.resolve("data/sledwright/sledwright-book.db")).exists();
        List<byte[]> before = papers();
        assertThat(before.get(1)).asString().isEqualTo(Run.of("quote", request.toString(), "--format", "json", "--today", "2026-03-02").out());
        assertThat(before.get(6)).asString().isEqualTo(Run.of("quote", request.toString(), "--format", "json", "--for", "customer", "--today", "2026-03-02").out());
        assertThat(before.get(4)).startsWith('%', 'P', 'D', 'F');
        Files.writeString(shop.resolve("offers.csv"), "");
        assertThat(book("revise", "2026-0001").code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(papers()).usingRecursiveComparison().isEqualTo(before);
    }

    @Test
    void aQuoteLivesFromItsRequestToItsDelivery() {
        saved();
        assertThat(book("send", "2026-0001").out()).isEqualTo("2026-0001: sent\n");
        assertThat(book("revise", "2026-0001", "--set", "machines=2").out()).isEqualTo("2026-0001: draft\n");
        for (String step : List.of("send", "accept", "pick", "deliver")) {
            assertThat(book(step, "2026-0001", "--reason", "by telephone").code()).isEqualTo(ExitCode.DONE);
        }
        String history = book("history", "2026-0001").out();
        assertThat(history).startsWith("2026-0001 for Orchard Surveys: delivered\nNote: in May\nReason: by telephone\n")
                .containsPattern("2026-03-02 +2 +revise +anna");
        String json = book("history", "2026-0001", "--format", "json").out();
        assertThat(Schemas.faults("book-result", json)).isEmpty();
        assertThat(json).contains("\"state\": \"delivered\"", "\"at\": \"2026-03-02T00:00:00Z\"", "\"step\": \"pick\"", "\"machines\": 2");
        assertThat(book("history", "2026-0001", "--format", "csv").out()).contains("2,2026-03-02T00:00:00Z,anna,2026-0001,1,send,");
        assertThat(book("copy", "2026-0001", "--customer", "Nordmole").out()).isEqualTo("2026-0002\n");
        Run list = book("list", "--format", "json");
        assertThat(Schemas.faults("book-result", list.out())).isEmpty();
        assertThat(book("list", "--format", "csv", "--customer", "nord").out()).contains("2026-0002,draft,Nordmole,node,1,1,2,");
        assertThat(book("list", "--words", "nowhere").out()).isEqualTo("No quote of the book is like that.\n");
        assertThat(book("list").out()).contains("2 quotes");
    }

    @Test
    void whatIsAskedOfAQuoteThatDoesNotFitIsSaid() {
        saved();
        assertThat(book("accept", "2026-0001")).isEqualTo(new Run(ExitCode.USAGE, "",
                "sledwright: 2026-0001 is draft; accept takes a quote that is sent\n"));
        assertThat(book("send", "2026-0007").err()).isEqualTo("sledwright: there is no quote 2026-0007 in the book\n");
        assertThat(book("send", "7").err()).contains("'7' must be the number of a quote such as 2026-0001");
        Run backwards = book("list", "--since", "2026-03-05", "--until", "2026-03-01");
        assertThat(backwards.err()).isEqualTo("sledwright: no day is from 2026-03-05 until 2026-03-01; the later day comes last\n");
        assertThat(backwards.code()).isEqualTo(ExitCode.USAGE);
        assertThat(book("list", "--since", "yesterday").err()).contains("'yesterday' must be a date, such as 2026-11-18");
        assertThat(book("list", "--book", "jdbc:other:shop").err())
                .isEqualTo("sledwright: --book 'jdbc:other:shop' must be a file, or begin with jdbc:postgresql:\n");
        assertThat(book("list", "--book", "jdbc:postgresql://127.0.0.1:1/shop?user=anna&password=secret"))
                .satisfies(run -> assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT))
                .satisfies(run -> assertThat(run.err()).startsWith("jdbc:postgresql://127.0.0.1:1/shop: cannot be reached (").doesNotContain("secret"));
        assertThat(book("list", "--state", "lost").err()).contains("'lost' must be one of draft, sent, accepted");
        assertThat(Run.of("book").err()).contains("a step is missing; it is one of save, list, show");
    }

    @Test
    void aRequestThatCannotBeMetIsKept() {
        Run nothing = book("save", request.toString(), "--customer", "Nordmole", "--set", "require.cores=8000");
        assertThat(nothing).isEqualTo(new Run(ExitCode.NO_VALID_BUILD, "2026-0001\n", "sledwright: 2026-0001 is kept and offers nothing,"
                + " for not all that is asked for was found; 'book show 2026-0001' says why\n"));
        assertThat(book("revise", "2026-0001", "--set", "require.memory_gb=9").err()).as("of each version").isEqualTo(nothing.err());
        assertThat(book("list").out()).contains("none");
        assertThat(book("send", "2026-0001").err()).contains("offers nothing, for no build was found; revise it");
    }

    @Test
    void faultsOfRequestAndCatalogueAreAllSaid() throws IOException {
        Files.writeString(request, "kind: quote\ncatalog: shop\nrequire: { cores: many }\n");
        Files.writeString(shop.resolve("offers.csv"), "sku\n");
        Run run = book("save", request.toString(), "--customer", "Nordmole");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).contains("node.yaml:3: require.cores \"many\": must be a number", "offers.csv:1: ");
        Files.writeString(request, "kind: quote\nrequire: { cores: 4 }\n");
        assertThat(book("save", request.toString(), "--customer", "Nordmole").err()).contains("names no catalogue");
        assertThat(book("list").out()).isEqualTo("No quote of the book is like that.\n");
    }

    @Test
    void aBackupHoldsWhatTheBookHeld() {
        saved();
        Path copy = folder.resolve("copy.db");
        assertThat(book("backup", copy.toString())).isEqualTo(new Run(ExitCode.DONE, "", ""));
        for (String[] question : List.of(new String[] {"list"}, new String[] {"history", "2026-0001"})) {
            List<String> words = new ArrayList<>(List.of(question));
            words.addAll(List.of("--book", copy.toString()));
            assertThat(book(words.toArray(String[]::new))).isEqualTo(book(question));
        }
    }

    @Test
    void ofTwoThatTakeTheLastUnitOneIsToldWhatItCostsNow() throws IOException {
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,150,1,1");
        saved();
        saved();
        assertThat(book("send", "2026-0001", "--hold").out()).isEqualTo("2026-0001: sent, held until 2026-03-16\n");
        assertThat(book("hold", "2026-0002")).isEqualTo(new Run(ExitCode.NO_VALID_BUILD, "", """
                sledwright: 2026-0002 takes what is not there any more.
                REED-S of lot A2: 1 wanted, 0 left; 2026-0001 has some
                It costs 439.50 EUR now, 188.00 more; revise it to offer that.
                """));
        assertThat(book("revise", "2026-0002").code()).isEqualTo(ExitCode.DONE);
        assertThat(book("hold", "2026-0002", "--until", "2026-03-10").out()).isEqualTo("2026-0002: draft, held until 2026-03-10\n");
        assertThat(book("accept", "2026-0001").out()).isEqualTo("2026-0001: accepted\n");
        assertThat(book("history", "2026-0001", "--format", "csv").out()).contains(",send,\"held until 2026-03-16\"\n");
        assertThat(book("history", "2026-0002").out()).contains("hold", "until 2026-03-10");
    }

    @Test
    void whatCannotBeMetAnyMoreIsSaid() throws IOException {
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,150,1,1");
        offer("WREN-2,A1,Marsh Trade,used,310.00,1,4", "WREN-2,A1,Marsh Trade,used,310.00,1,0");
        saved();
        saved();
        book("hold", "2026-0001");
        assertThat(book("hold", "2026-0002").err()).endsWith("With what is left, its request cannot be met.\n");
        String[] question = {"quote", request.toString(), "--format", "json"};
        assertThat(Run.of(question).out()).contains("\"status\": \"proved\"");
        // The clock is past the last day of that hold.
        assertThat(Run.of("quote", request.toString(), "--format", "json", "--book", usual()).out()).contains("\"status\": \"proved\"");
        book("send", "2026-0001");
        book("accept", "2026-0001");
        assertThat(Run.of("quote", request.toString(), "--format", "json", "--book", usual()).code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(Run.of("check", "scenarios/build-valid.yaml", "--book", usual()).code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void whatCostsTheSameNowIsSaid() throws IOException {
        offer("REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,150,1,1,0,\n");
        saved();
        saved();
        book("hold", "2026-0001");
        assertThat(book("hold", "2026-0002").err()).endsWith("It costs 251.50 EUR now, as much as before; revise it to offer that.\n");
    }

    @Test
    void whatCannotBeAskedAnyMoreIsSaid() throws IOException {
        Files.writeString(request, "forbid: [M64]\n", StandardOpenOption.APPEND);
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,150,1,1");
        saved();
        saved();
        book("hold", "2026-0001");
        offer("M64,A8,Marsh Trade,used,78,1,12,0,40\n", "");
        Path memory = shop.resolve("memory.csv");
        Files.writeString(memory, Files.readString(memory).replaceAll("(?m)^M64,.*\\n", ""));
        assertThat(book("hold", "2026-0002").err()).endsWith("What it costs now is not known, for its request cannot be answered today.\n");
    }

    @Test
    void openQuotesAreReviewed() throws IOException {
        saved();
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,160,1,9");
        String text = book("review", "--catalog", shop.toString()).out();
        assertThat(text).startsWith("1 open quote against today's catalogue\n1 dearer\n").containsPattern("2026-0001 +Orchard Surveys +dearer +251.50 +261.50 +EUR");
        String json = book("review", "--catalog", shop.toString(), "--format", "json").out();
        assertThat(Schemas.faults("review-result", json)).isEmpty();
        assertThat(json).contains("\"is\": 261.50", "\"bound\": 261.50");
        assertThat(book("review", "--catalog", shop.toString(), "--format", "csv").out()).contains("dearer,251.50,261.50,261.50,EUR,");
        assertThat(book("review").code()).isEqualTo(ExitCode.USAGE);
    }

    private Run allocate(String... further) {
        List<String> words = new ArrayList<>(List.of("allocate", "--catalog", shop.toString()));
        words.addAll(List.of(further));
        return book(words.toArray(String[]::new));
    }

    private void accepted(String customer, String... sets) {
        List<String> words = new ArrayList<>(List.of("save", request.toString(), "--customer", customer));
        words.addAll(List.of(sets));
        Run saved = book(words.toArray(String[]::new));
        assertThat(saved.err()).isEmpty();
        String number = saved.out().strip();
        assertThat(book("send", number).code()).isEqualTo(ExitCode.DONE);
        assertThat(book("accept", number).code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void promisesAreDrawnAnewFromTodaysStock() throws IOException {
        assertThat(allocate().out()).isEqualTo("Nothing is promised.\n");
        accepted("Orchard Surveys");
        accepted("Nordmole");
        offer("REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        String text = allocate().out();
        assertThat(text).startsWith("2 promises drawn from today's stock\n1: the same parts from the same lots\n1: the same parts, some from other lots\n")
                .containsPattern("moved +251.50 +252.50 +EUR +1 REED-S of +1 REED-S of").contains("All that is delivered costs 504.00 EUR at today's prices; none like it costs\nless.\n")
                .endsWith("Nothing is written yet; --apply does that.\n");
        String json = allocate("--format", "json").out();
        assertThat(Schemas.faults("allocation-result", json)).isEmpty();
        assertThat(json).contains("\"fate\": \"moved\"", "\"least_cost\": 504.00", "\"applied\": false");
        assertThat(allocate("--apply").out()).endsWith("Applied: the book keeps these units from now on.\n");
        assertThat(allocate("--format", "csv").out()).contains("same,REED-S,A20,1\n").doesNotContain("moved");
        book("pick", "2026-0001");
        assertThat(allocate().out()).contains("1: picked, and stays as it is");
    }

    @Test
    void whatCannotBeKeptIsNamedWithWaysOut() throws IOException {
        accepted("Orchard Surveys");
        accepted("Nordmole");
        saved();
        book("hold", "2026-0003");
        offer("REED-S,A2,Marsh Trade,used,150,1,9,0,", "REED-S,A2,Marsh Trade,used,150,1,0,0,");
        Run run = allocate();
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out()).startsWith("2 promises drawn from today's stock\n2: cannot be kept\n").contains("2026-0002 for Nordmole cannot be kept\n- REED-S: 1 wanted, 0 left\n"
                + "The nearest ways out:\n- Get 1 more unit of REED-S: builds from 251.50 EUR.\n", "No allocation delivers more machines.\n",
                "Holds are more than there is: REED-S of lot A2: 1 wanted, 0 left; 2026-0003 has\nsome\n");
        String json = allocate("--format", "json").out();
        assertThat(Schemas.faults("allocation-result", json)).isEmpty();
        assertThat(allocate("--format", "csv").out()).contains("2026-0002,Nordmole,broken,,,0\n");
        offer("REED-S,A2,Marsh Trade,used,150,1,0,0,", "REED-S,A2,Marsh Trade,used,150,1,0,0,\nREED-S,A20,Marsh Trade,used,150,1,9,30,");
        assertThat(allocate().out()).contains("- What is left of its parts would come after 2026-03-04.\n");
    }

    /** Two small modules in place of one, which gives as much, and more bandwidth, for less load. */
    @Test
    void otherPartsKeepWhatTheCustomerWasTold() throws IOException {
        accepted("Orchard Surveys");
        accepted("Nordmole");
        offer("M16,A6,Fen Surplus,used,21.50,1,60,2,12.25\nM16,A6,Fen Surplus,used,19.00,16,60,2,12.25\nM16,A7,Marsh Trade,new,44,1,100,7,\n",
                "M16,A6,Fen Surplus,used,21.50,1,1,2,12.25\nM08,A30,Marsh Trade,used,5,1,9,0,\n");
        Path memory = shop.resolve("memory.csv");
        Files.writeString(memory, Files.readString(memory).replace("DDR4,RDIMM,8,1,,8,2400,1.2,3", "DDR4,RDIMM,8,1,,8,2400,1.2,2"));
        Run run = allocate();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains("1: other parts; all that the customer was told is kept\n", "None that delivers as many changes fewer.\n");
        assertThat(allocate("--format", "csv").out()).contains("changed,M08,A30,2\n");
        allocate("--apply");
        assertThat(book("history", "2026-0001").out() + book("history", "2026-0002").out()).contains("other parts, units from other lots: 2");
    }

    /** The bench puts together what was chosen, from the lots that are kept for it, whatever the catalogue says later. */
    @Test
    void theSheetOfAQuoteIsOfItsNumber() throws IOException {
        accepted("Orchard Surveys");
        accepted("Nordmole");
        offer("REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        String[] sheet = {"sheet", "2026-0002", "--format", "csv", "--catalog", shop.toString()};
        assertThat(Run.of(environment(), false, sheet).out()).contains("REED-S,A2,\"Marsh Trade\",1,");
        allocate("--apply");
        offer("REED-S,A20,Marsh Trade,used,151,1,1,0,\n", "");
        Run first = Run.of(environment(), false, sheet);
        sheet[1] = "2026-0001";
        assertThat(first.out() + Run.of(environment(), false, sheet).out()).contains("REED-S,A2,\"Marsh Trade\",1,", "REED-S,A20,,1,");
        assertThat(Run.of(environment(), false, "sheet", "2026-0001", "--catalog", shop.toString()).out()).contains("2026-0001, version 1, node");
        assertThat(Run.of(environment(), false, "sheet", "2026-0001", "--rank", "2").err())
                .contains("2026-0001 is a quote of the book; its sheet is of what was chosen of it, without --rank and --set");
        assertThat(Run.of(environment(), false, "sheet", "2026-0009").err()).contains("there is no quote 2026-0009 in the book");
        Path memory = shop.resolve("memory.csv");
        Files.writeString(memory, Files.readString(memory).replace("M16,16 GB 2Rx4,DDR4,RDIMM,16,", "M16,16 GB 2Rx4,DDR4,RDIMM,8,"));
        assertThat(Run.of(environment(), false, "sheet", "2026-0001").err()).contains("the parts of 2026-0001 cannot be put together as this catalogue has them;"
                + " name with --catalog the one that it was answered from, as it was then");
        book("save", request.toString(), "--customer", "Third Customer", "--set", "require.cores=8000");
        assertThat(Run.of(environment(), false, "sheet", "2026-0003").err()).contains("2026-0003 offers nothing, for no build was found");
    }

    @Test
    void staleArePricesThatNoCustomerIsSent() throws IOException {
        Files.writeString(shop.resolve("catalog.yaml"), "\nhouse: { stale_after_days: 3 }\n", StandardOpenOption.APPEND);
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")).replaceAll("priced_on: \\S+", "priced_on: 2026-02-20"));
        saved();
        Run refused = book("send", "2026-0001");
        assertThat(refused.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(refused.err()).isEqualTo("sledwright: the prices of 2026-0001 are of 2026-02-20, 10 days ago; the shop offers none older than 3 days.\n"
                + "Maybe revise it, or allow them with --stale-prices.\n");
        assertThat(book("send", "2026-0001", "--stale-prices").out()).isEqualTo("2026-0001: sent\n");
    }

    private Run saved(String day, String customer, String... sets) {
        List<String> words = new ArrayList<>(List.of("book", "save", request.toString(), "--customer", customer, "--today", day));
        words.addAll(List.of(sets));
        return Run.of(environment(), false, words.toArray(String[]::new));
    }

    private void step(String day, String step, String number, String... further) {
        List<String> words = new ArrayList<>(List.of("book", step, number, "--today", day));
        words.addAll(List.of(further));
        Run run = Run.of(environment(), false, words.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    }

    /** Alike requests are one class, whose orders of each month a stock plan takes as they are. */
    @Test
    void whatWasAskedForBecomesThePlanOfAStock() throws IOException {
        Path supply = Files.writeString(folder.resolve("supply.csv"), "sku,supplier,unit_cost,available\nREED-S,Fen Surplus,90,40\n");
        Files.writeString(request, "kind: quote\nname: node\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
        saved("2026-01-10", "Orchard Surveys");
        saved("2026-01-11", "Nordmole", "--set", "require.memory_gb=20");
        saved("2026-02-10", "Third Customer");
        saved("2026-02-11", "Fourth Customer", "--set", "machines=3");
        saved("2026-02-12", "Fifth Customer", "--set", "require.cores=9", "--set", "limit.price=1");
        saved("2025-11-01", "Too Early");
        step("2026-01-12", "send", "2026-0001");
        step("2026-01-12", "accept", "2026-0001");
        step("2026-01-12", "send", "2026-0002");
        step("2026-01-13", "decline", "2026-0002", "--reason", "Too dear", "--would-pay", "240.50");
        step("2026-02-12", "send", "2026-0003");
        step("2026-02-12", "accept", "2026-0003");
        String[] demand = {"demand", "--months", "2", "--catalog", shop.toString(), "--supply", supply.toString()};
        String yaml = book(demand).out();
        assertThat(yaml).contains("name: \"demand of 2026-01-03 to 2026-03-02\"", "# 5 quotes from 2026-01-03 to 2026-03-02, in 2 classes\n", "  # node: asked for in 4 quotes, bought 2, lost 1, still open 0, without a build 1; bought of what was decided: 67 %\n",
                "  - name: \"node\"\n    demand: { months: [1, 2] }\n    price_accepted: 251.50\n", "    enclosure: own\n", "  # no class, for nobody has bought it\n");
        Path plan = Files.writeString(folder.resolve("plan.yaml"), yaml);
        Run stocked = Run.of("restock", plan.toString(), "--set", "samples=10", "--format", "json");
        assertThat(stocked.code()).as(stocked.err()).isEqualTo(ExitCode.DONE);
        assertThat(stocked.out()).containsPattern("\"sku\": \"REED-S\",\\s+\"on_shelf\": 9,");
        // What is promised is gone from the shelf.
        assertThat(Run.of("restock", plan.toString(), "--set", "samples=10", "--format", "json", "--book", usual()).out()).containsPattern("\"sku\": \"REED-S\",\\s+\"on_shelf\": 7,");
        List<String> json = new ArrayList<>(List.of(demand));
        json.addAll(List.of("--format", "json"));
        assertThat(Schemas.faults("demand-result", book(json.toArray(String[]::new)).out())).isEmpty();
        json.set(json.size() - 1, "csv");
        assertThat(book(json.toArray(String[]::new)).out()).contains("node,2,2026-02-03,2,1,1,2,0.666667,251.50,EUR\n");
        Path memory = shop.resolve("memory.csv");
        saved("2026-02-20", "Sixth Customer", "--set", "use=[M64]");
        step("2026-02-20", "send", "2026-0006");
        step("2026-02-20", "decline", "2026-0006");
        String[] lost = {"lost", "--months", "2", "--catalog", shop.toString(), "--format"};
        assertThat(book("lost", "--months", "2", "--catalog", shop.toString()).out()).startsWith("2 quotes lost from 2026-01-03 to 2026-03-02\n").contains("Too dear  ")
                .containsPattern("quotes +too dear by +above others").contains("would pay").asString().containsIgnoringWhitespaces("""
                        Amounts are EUR, of a reason those in the middle. too dear by: what the customer would have paid is known from \
                        'book decline --would-pay'. above others: beside what machines of alike requests were bought for; below 0 it was cheaper.""");
        assertThat(Schemas.faults("lost-result", book(lost[0], lost[1], lost[2], lost[3], lost[4], lost[5], "json").out())).isEmpty();
        assertThat(book(lost[0], lost[1], lost[2], lost[3], lost[4], lost[5], "csv").out()).contains("2026-0002,Nordmole,declined,\"Too dear\",274.50,240.50,34.00,23.00,EUR");
        Files.writeString(memory, Files.readString(memory).replaceAll("(?m)^M64,.*\\n", ""));
        offer("M64,A8,Marsh Trade,used,78,1,12,0,40\n", "");
        assertThat(book(demand).out()).contains("# not among them, since their requests cannot be read with today's catalogue: 2026-0006\n");
        assertThat(book("lost", "--months", "2", "--catalog", shop.toString()).out()).contains("not said");
        Path workbook = folder.resolve("lost.xlsx");
        book("lost", "--months", "2", "--catalog", shop.toString(), "--format", "xlsx", "-o", workbook.toString());
        try (FileSystem parts = FileSystems.newFileSystem(workbook)) {
            assertThat(Files.readString(parts.getPath("docProps/core.xml"))).contains("Lost quotes");
        }
    }

    @Test
    void whatIsNoNumberOfMonthsOrNoAmountIsSaid() {
        assertThat(book("lost", "--months", "0", "--catalog", shop.toString()).err()).contains("'0' must be a whole number of months from 1 to 120");
        saved();
        assertThat(book("decline", "2026-0001", "--would-pay", "much").err()).contains("'much' must be an amount, such as 1150.00");
        book("send", "2026-0001");
        assertThat(book("decline", "2026-0001", "--would-pay", "110.555").err()).contains("110.555 has more decimals than the 2 of EUR");
        assertThat(book("send", "2026-0001", "--would-pay", "5").err()).isEqualTo("sledwright: --would-pay is for 'decline' alone\n");
        assertThat(book("lost", "--months", "1", "--catalog", shop.toString()).out()).isEqualTo("0 quotes lost from 2026-02-03 to 2026-03-02\n");
    }

    /** Not even the bytes of the file have the name after that. */
    @Test
    void aCustomerIsExportedAndErased() throws IOException {
        saved();
        book("save", request.toString(), "--customer", "Nordmole");
        book("send", "2026-0001", "--hold");
        link("Orchard Surveys", "a");
        link("Nordmole", "b");
        Run exported = book("export", "--customer", "Orchard Surveys", "--format", "json");
        assertThat(Schemas.faults("customer-result", exported.out())).isEmpty();
        assertThat(exported.out()).contains("\"customer\": \"Orchard Surveys\"", "\"note\": \"in May\"", "kind: quote\\ncatalog: shop", "\"id\": \"aaaaaaaaaaaa\"", "Orchard Surveys link")
                .doesNotContain("2026-0002", "bbbb");
        assertThat(book("erase", "--customer", "Orchard").err()).isEqualTo("sledwright: there is no customer Orchard in the book; name one in full\n");
        book("accept", "2026-0001");
        assertThat(book("erase", "--customer", "Orchard Surveys").err())
                .isEqualTo("sledwright: 2026-0001 is accepted; its customer is erased when it is delivered or declined\n");
        book("pick", "2026-0001");
        book("deliver", "2026-0001");
        assertThat(bytes().contains("orchard")).isTrue();
        assertThat(book("erase", "--customer", "Orchard Surveys")).isEqualTo(new Run(ExitCode.DONE, "", "erased from 1 quote and 1 link\n"));
        assertThat(bytes().contains("orchard")).isFalse();
        assertThat(book("list", "--format", "csv").out()).contains("2026-0001,delivered,\"erased 1\",erased,1,1,1,251.50,EUR");
        assertThat(book("show", "2026-0001").err()).contains("2026-0001 has no documents any more, for its customer was erased");
        assertThat(book("copy", "2026-0001").err()).contains("2026-0001 has no request any more, for its customer was erased");
        assertThat(book("list", "--words", "orchard").out()).isEqualTo("No quote of the book is like that.\n");
    }

    /** Whoever has only been sent a link. */
    @Test
    void aCustomerOfALinkAloneIsErased() throws IOException {
        saved();
        link("Fenland", "c");
        assertThat(book("export", "--customer", "Fenland", "--format", "json").out()).contains("\"quotes\": []", "Fenland link");
        assertThat(book("erase", "--customer", "Fenland").err()).isEqualTo("erased from 0 quotes and 1 link\n");
        assertThat(book("erase", "--customer", "Fenland").err()).isEqualTo("sledwright: there is no customer Fenland in the book; name one in full\n");
        assertThat(bytes().contains("fenland")).isFalse();
    }

    private void link(String customer, String digest) {
        try (Book some = Book.open(BookPlace.of(Path.of(usual())), "test")) {
            some.links().keep(new CustomerLink(digest.repeat(43), customer, customer + " link", "kind: quote\nname: " + customer + " link\n", List.of(), LocalDate.of(2026, 3, 11),
                    new CustomerLink.Made("anna", Instant.parse("2026-03-02T10:00:00Z"))), LocalDate.of(2026, 3, 2));
        }
    }

    @Test
    void whereTheShopNamesNoLastDayTheHoldDoes() throws IOException {
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(Folders.SHOP.resolve("catalog.yaml")));
        saved();
        assertThat(book("hold", "2026-0001").err()).isEqualTo(
                "sledwright: 2026-0001 names no last day, so say until when its parts are held: --until DAY\n");
        assertThat(book("hold", "2026-0001", "--until", "2026-09-01").out()).isEqualTo("2026-0001: draft, held until 2026-09-01\n");
        assertThat(book("send", "2026-0001").out()).isEqualTo("2026-0001: sent, held until 2026-09-01\n");
    }

    /** Nobody waits for a book that was not asked for. */
    @Test
    void aRunWithoutABookLoadsNothingOfIt() throws Exception {
        Path loaded = folder.resolve("loaded");
        Process quote = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-Xlog:class+load:file=" + loaded, "-cp", System.getProperty("java.class.path"), "sledwright.cli.Main", "quote", request.toString())
                .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        assertThat(quote.waitFor()).isEqualTo(ExitCode.DONE);
        assertThat(Files.readString(loaded)).contains(" sledwright.desk.Desk ").doesNotContain(" sledwright.book.", " org.sqlite.", " org.flywaydb.",
                " com.zaxxer.", " org.postgresql.");
    }

    /** As where nothing that lies in /tmp may be run. */
    @Test
    void aFolderForTemporaryFilesThatIsOfNoUseIsNamed() throws Exception {
        Path none = folder.resolve("none");
        Process list = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-Djava.io.tmpdir=" + none, "-cp", System.getProperty("java.class.path"), "sledwright.cli.Main", "book", "list", "--book",
                folder.resolve("kept.db").toString()).redirectErrorStream(true).start();
        String said = new String(list.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(said).isEqualTo(("%s: cannot be opened, for SQLite cannot be unpacked into the folder for temporary files, %s, or not be run"
                + " from there; name another with SLEDWRIGHT_JAVA_OPTIONS=-Djava.io.tmpdir=FOLDER\n").formatted(folder.resolve("kept.db"), none));
        assertThat(list.waitFor()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(folder.resolve("kept.db")).doesNotExist();
    }

    private String bytes() throws IOException {
        return Files.readString(Path.of(usual()), StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
    }

    private String usual() {
        return folder.resolve("data/sledwright/sledwright-book.db").toString();
    }

    private void offer(String old, String fresh) throws IOException {
        Path offers = shop.resolve("offers.csv");
        String text = Files.readString(offers);
        assertThat(text).contains(old);
        Files.writeString(offers, text.replace(old, fresh));
    }
}
