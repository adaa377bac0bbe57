package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.browser.HtmlValidity;
import sledwright.samples.Folders;

/** Whatever is sent, and however slowly, gets its status code, while others are answered. */
class HttpBoundsTest {

    private static final String JSON = "application/json";
    private static final String QUOTE = "{\"kind\": \"quote\", \"require\": {\"cores\": 8, \"memory_gb\": 32}}";

    private static final List<String> LOG = new CopyOnWriteArrayList<>();
    private static WebServer server;
    private static URI address;

    @BeforeAll
    static void start() {
        server = Servers.start(Folders.SHOP, new WebSettings.Bounds(2_000, 4_096, Duration.ofSeconds(1), 6, 1, 1), LOG);
        address = server.address();
    }

    @AfterAll
    static void stop() {
        server.close();
        assertThat(LOG).noneMatch(line -> line.startsWith("defect"));
    }

    private static void assertOthersAreAnswered() {
        assertThat(Wire.post(address, "/api/quote", JSON, QUOTE).status()).isEqualTo(200);
    }

    private static void assertRefused(Wire.Reply reply, int status, String... words) {
        assertThat(reply.status()).isEqualTo(status);
        assertThat(reply.body()).startsWith("{\n  \"faults\": [").contains(words).doesNotContain("jetty", "Exception", "\tat ");
        assertThat(reply.head()).contains("Content-Type: application/json", "X-Content-Type-Options: nosniff", "Content-Security-Policy: default-src 'none'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"evil.example", "evil.example:8080", "127.0.0.1.evil.example", "192.168.0.7"})
    void aNameThatSomebodyElsePointsHereIsRefused(String host) {
        assertRefused(Wire.say(address, "GET /api/health HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n".formatted(host)), 403,
                "\"place\": \"Host\"", "is not a name of this server; it is called 127.0.0.1, ::1, [::1], localhost");
    }

    @Test
    void theNamesOfThisMachineAreItsOwn() {
        for (String host : List.of("127.0.0.1:1", "localhost", "LOCALHOST:9", "[::1]:8")) {
            assertThat(Wire.say(address, "GET /api/health HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n".formatted(host)).status()).as(host).isEqualTo(200);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {"Origin: http://evil.example;is another site, whose pages may not ask here", "Origin: null;is another site", "Origin: http://127.0.0.1:1;is another site",
        "Sec-Fetch-Site: cross-site;is a page of another site, which may not ask here", "Sec-Fetch-Site: same-site;is a page of another site"})
    void aPageOfAnotherSiteIsRefused(String header, String words) {
        assertRefused(Wire.post(address, "/api/quote", JSON, QUOTE, header), 403, words);
    }

    @Test
    void itsOwnPageMayAsk() {
        assertThat(Wire.post(address, "/api/quote", JSON, QUOTE, "Origin: http://" + address.getAuthority(), "Sec-Fetch-Site: same-origin").status())
                .isEqualTo(200);
    }

    @Test
    void whatIsNotThereOrNotTakenIsSaid() {
        assertRefused(Wire.get(address, "/api/nothing"), 404, "is nothing that is answered here; questions are /api/check, /api/compare");
        assertRefused(Wire.get(address, "/nothing/at/all"), 404, "is nothing that is answered here");
        Wire.Reply wrong = Wire.get(address, "/api/quote");
        assertRefused(wrong, 405, "\"place\": \"the method\"", "is not taken here; it must be POST");
        assertThat(wrong.head()).contains("Allow: POST");
        assertRefused(Wire.say(address, "OPTIONS /api/quote HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"), 405, "OPTIONS");
        assertRefused(Wire.post(address, "/api/quote", "text/plain", QUOTE), 415, "must be application/yaml or application/json");
        assertRefused(Wire.say(address, "POST /api/quote HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 2\r\n\r\n{}"), 415, "Content-Type");
        assertRefused(Wire.post(address, "/api/quote", JSON, QUOTE, "Content-Encoding: gzip"), 415, "\"place\": \"Content-Encoding\"", "is not read here; send the body as it is");
        for (String page : List.of("/", "/book", "/catalogue")) {
            assertRefused(Wire.post(address, page, JSON, QUOTE), 405, "must be GET or HEAD");
        }
        assertRefused(Wire.get(address, "/page/answer"), 405, "must be POST");
        assertRefused(Wire.get(address, "/page/work"), 405, "must be POST");
    }

    @Test
    void whoeverOpensAnAddressInABrowserReadsAPage() {
        String accept = "Accept: text/html,application/xhtml+xml,*/*;q=0.8";
        Wire.Reply reply = Wire.get(address, "/nothing/%3Cb%3E", accept);
        assertThat(reply.status()).isEqualTo(404);
        assertThat(reply.head()).contains("Content-Type: text/html; charset=utf-8", "Content-Security-Policy: default-src 'none'");
        assertThat(reply.body()).contains("This cannot be shown", "The request is nothing that is answered here.").doesNotContain("<b>", "Exception");
        assertThat(HtmlValidity.faults(reply.body())).isEmpty();
        assertThat(Wire.say(address, "GET / HTTP/1.1\r\nHost: evil.example\r\n" + accept + "\r\nConnection: close\r\n\r\n").body()).contains("Host &quot;evil.example&quot; is not a name of this server");
        assertThat(Wire.get(address, "/for/" + "A".repeat(43), accept).body()).contains("is not answered any more; ask the shop for another.");
        assertRefused(Wire.get(address, "/api/nothing", accept), 404, "is nothing that is answered here");
        assertThat(Wire.get(address, "/api/nothing", accept, "Sec-Fetch-Dest: document").body()).as("a link that is followed").contains("This cannot be shown");
        assertRefused(Wire.get(address, "/api/nothing", accept, "Sec-Fetch-Dest: empty"), 404, "is nothing that is answered here");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/../pom.xml", "/api/../../pom.xml", "/%2e%2e/pom.xml", "/..%2fpom.xml", "/assets/..%5c..%5cpom.xml", "//etc/passwd", "/api/quote/%00"})
    void noFileOfTheMachineCanBeNamed(String path) {
        Wire.Reply reply = Wire.get(address, path);
        assertThat(reply.status()).isIn(400, 404);
        assertThat(reply.body()).startsWith("{\n  \"faults\"").doesNotContain("<project", "root:");
    }

    @Test
    void aBodyThatIsTooLargeIsNotRead() {
        String large = "#".repeat(3_000);
        assertRefused(Wire.post(address, "/api/quote", JSON, large), 413, "\"place\": \"the body\"", "is larger than 2000 bytes");
        assertRefused(Wire.say(address, "POST /api/quote HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\n"
                + "Transfer-Encoding: chunked\r\n\r\nbb8\r\n" + large + "\r\n0\r\n\r\n"), 413, "is larger than 2000 bytes");
        assertOthersAreAnswered();
    }

    @Test
    void headersAndAddressesAreBounded() {
        assertRefused(Wire.get(address, "/api/health", "X-Long: " + "x".repeat(9_000)), 431, "has more header lines than are read");
        assertRefused(Wire.get(address, "/" + "x".repeat(9_000)), 414, "has a longer address than is read");
    }

    @ParameterizedTest
    @ValueSource(strings = {"nonsense\r\n\r\n", "GET / HTTP/1.1\r\n\r\n", "GET / HTTP/1.1\r\nHost: a b\r\n\r\n", "GET / HTTP/1.1\r\nHost: x\r\nHost: y\r\n\r\n",
        "POST /api/quote HTTP/1.1\r\nHost: localhost\r\nContent-Length: -5\r\n\r\n",
        "POST /api/quote HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n", "GET /%zz HTTP/1.1\r\nHost: localhost\r\n\r\n"})
    void whatIsNoHttpIsRefused(String text) {
        Wire.Reply reply = Wire.say(address, text);
        assertThat(reply.status()).as(reply.head()).isEqualTo(400);
        assertThat(reply.body()).contains("is not a request as HTTP has it").doesNotContain("Exception", "jetty");
    }

    @Test
    void whatIsNestedWithoutEndIsRefusedInPlainWords() {
        assertRefused(Wire.post(address, "/api/quote", JSON, "[".repeat(1_900)), 400, "not readable as JSON: it is nested too deeply, or a value in it is too long");
    }

    @Test
    void aVersionThatIsNotSpokenIsRefused() {
        assertRefused(Wire.say(address, "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n"), 426, "is of a version of HTTP that is not spoken here; it must be HTTP/1.1");
        assertRefused(Wire.say(address, "GET / HTTP/3.7\r\nHost: localhost\r\n\r\n"), 505, "is of a version of HTTP that is not spoken here");
    }

    @Test
    void aBodyThatComesTooSlowlyIsGivenUp() throws Exception {
        try (Socket slow = Wire.open(address)) {
            OutputStream out = slow.getOutputStream();
            out.write("POST /api/quote HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{".getBytes(StandardCharsets.UTF_8));
            out.flush();
            assertOthersAreAnswered();
            String reply = new String(slow.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(reply).startsWith("HTTP/1.1 408 ").contains("did not come in full within 1 s");
        }
    }

    /** However steadily the bytes come. */
    @Test
    void headersThatComeTooSlowlyAreGivenUp() throws Exception {
        try (Socket slow = Wire.open(address)) {
            OutputStream out = slow.getOutputStream();
            out.write("GET /api/health HTTP/1.1\r\nHost: localhost\r\n".getBytes(StandardCharsets.UTF_8));
            boolean open = true;
            for (int beat = 0; beat < 40 && open; beat++) {
                Thread.sleep(200);
                open = goesOn(out);
            }
            assertThat(open).isFalse();
        }
    }

    /** Many answers are asked for and none is read: what fills the way to the reader is no thread's wait, and ends soon. */
    @Test
    void answersThatAreNotTakenAreGivenUp() throws Exception {
        String one = "GET /api/openapi.json HTTP/1.1\r\nHost: localhost\r\n\r\n";
        List<Socket> slow = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            Socket reader = new Socket();
            reader.setReceiveBufferSize(4_096);
            reader.setSoTimeout(20_000);
            reader.connect(new InetSocketAddress(address.getHost(), address.getPort()));
            reader.getOutputStream().write(one.repeat(300).getBytes(StandardCharsets.UTF_8));
            slow.add(reader);
        }
        assertOthersAreAnswered();
        Thread.sleep(4_000);
        int whole = 300 * Wire.get(address, "/api/openapi.json").body().length();
        for (Socket reader : slow) {
            assertThat(readToTheEnd(reader)).isLessThan(whole);
            reader.close();
        }
        assertOthersAreAnswered();
    }

    private static long readToTheEnd(Socket socket) {
        byte[] some = new byte[65_536];
        long read = 0;
        try {
            for (int now = socket.getInputStream().read(some); now >= 0; now = socket.getInputStream().read(some)) {
                read += now;
            }
        } catch (IOException cut) {
            // The end, too.
        }
        return read;
    }

    private static boolean goesOn(OutputStream out) {
        try {
            out.write("X: 1\r\n".getBytes(StandardCharsets.UTF_8));
            out.flush();
            return true;
        } catch (IOException closed) {
            return false;
        }
    }

    @Test
    void connectionsThatSayNothingMakeRoomForThoseThatDo() throws Exception {
        List<Socket> silent = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            silent.add(Wire.open(address));
        }
        assertOthersAreAnswered();
        for (Socket socket : silent) {
            socket.close();
        }
    }

    @Test
    void whoeverFindsTheQueueFullIsToldToComeAgain() {
        String order = "{\"kind\": \"order\", \"lines\": {\"a\": {\"machines\": 3, \"require\": {\"cores\": 8}}, \"b\": {\"machines\": 2, \"require\": {\"memory_gb\": 64}}}}";
        List<CompletableFuture<Wire.Reply>> flood = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            flood.add(CompletableFuture.supplyAsync(() -> Wire.post(address, "/api/order", JSON, order), work -> new Thread(work).start()));
        }
        List<Wire.Reply> replies = flood.stream().map(CompletableFuture::join).toList();
        assertThat(replies).extracting(Wire.Reply::status).contains(200, 503).containsOnly(200, 503);
        replies.stream().filter(reply -> reply.status() == 503).forEach(reply -> {
            assertRefused(reply, 503, "has to wait: too many questions are being answered; ask again soon");
            assertThat(reply.head()).contains("Retry-After: 2");
        });
    }

    @Test
    void theLogSaysWhatWasAskedAndNothingOfTheCustomer() {
        Wire.post(address, "/api/quote?set=name=Fenwick", JSON, "{\"kind\": \"quote\", \"name\": \"Fenwick\", \"require\": {\"cores\": 8}}");
        Wire.get(address, "/Fenwick");
        assertThat(LOG).noneMatch(line -> line.contains("Fenwick"))
                .anyMatch(line -> line.matches("\\d{4}-\\d\\d-\\d\\dT[0-9:.]+Z POST /api/quote 200 \\d+ ms \\d+ B"))
                .anyMatch(line -> line.matches("\\S+ GET other 404 \\d+ ms \\d+ B"));
    }
}
