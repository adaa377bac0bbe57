package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import org.junit.jupiter.api.Test;

/** What is wrong in a question is said as in a file: all of it, each with its place, line and value. */
class FaultsOverHttpTest {

    private static final URI SERVER = Servers.small().address();
    private static final String JSON = "application/json";

    private static String refused(String path, String type, String body) {
        Wire.Reply reply = Wire.post(SERVER, path, type, body);
        assertThat(reply.status()).as(reply.body()).isEqualTo(400);
        return reply.body();
    }

    @Test
    void everyFaultOfARequestIsNamedWithItsLine() {
        String body = refused("/api/quote", "application/yaml", "kind: quote\nrequire:\n  cores: many\n  memry_gb: 3\nlimit: { price: -1 }\n");
        assertThat(body.replaceAll("\\s+", " ")).contains("{ \"place\": \"request\", \"line\": 3, \"value\": \"many\", \"message\": \"require.cores \\\"many\\\": must be a number\" }",
                "\"line\": 4", "memry_gb", "\"line\": 5, \"value\": \"-1\"");
    }

    @Test
    void jsonIsReadAsStrictlyAsItIsWritten() {
        assertThat(refused("/api/quote", JSON, "{\"kind\": \"quote\",\n \"require\": {\"cores\": 8,}}")).contains("\"line\": 2", "not readable as JSON: ");
        assertThat(refused("/api/quote", JSON, "kind: quote")).contains("not readable as JSON: ");
        assertThat(refused("/api/quote", JSON, "{\n\t\"kind\":\t\"quote\",\n\t\"name\": \"a\\/b \\\"c\\\"\",\n\t\"require\": {\"cores\":\"x\"}\n}"))
                .contains("\"line\": 4", "require.cores");
        assertThat(Wire.post(SERVER, "/api/quote", JSON, "{\"kind\":\"quote\",\"name\":\"a\\/b \\u00e9\\ud83d\\ude00\",\n\t\"require\":{\"cores\":8}}").body())
                .contains("\"request\": \"a/b \u00e9\ud83d\ude00\"");
    }

    @Test
    void optionsThatDoNotExistOrDoNotFitAreNamed() {
        String quote = "{\"kind\": \"quote\"}";
        assertThat(refused("/api/quote?why-nto=M16", JSON, quote)).contains("\"place\": \"the address\"", "why-nto is no option of this question",
                "did you mean why-not?");
        assertThat(refused("/api/quote?why-not=M17", JSON, quote)).contains("\"place\": \"why-not\"", "\"value\": \"M17\"", "is no part of the catalogue");
        assertThat(refused("/api/quote?steps=maybe", JSON, quote)).contains("must be true or false, or stand alone");
        assertThat(refused("/api/quote?seed=1&seed=2", JSON, quote)).contains("stands twice; it may stand once");
        assertThat(refused("/api/quote?seed=1.5", JSON, quote)).contains("must be a whole number");
        assertThat(refused("/api/quote?time-limit=soon", JSON, quote)).contains("must be a number");
        assertThat(refused("/api/quote?time-limit=0", JSON, quote)).contains("must be a number of seconds above 0, at most 600");
        assertThat(refused("/api/quote?for=me", JSON, quote)).contains("\"value\": \"me\"", "must be customer or shop");
        assertThat(refused("/api/quote?for=customer&steps", JSON, quote)).contains("\"place\": \"steps\"", "is not for the customer's eyes");
        assertThat(refused("/api/quote?set=%zz", JSON, quote)).contains("has letters that are not UTF-8, or a % without two hexadecimal digits");
        assertThat(refused("/api/compare?over=total", JSON, quote)).contains("\"place\": \"over\"",
                "Maybe add years=4 and price-per-kwh=0.30 to the address, or a section energy to the request.");
    }

    @Test
    void noFileCanBeNamedInARequest() {
        assertThat(refused("/api/restock", "application/yaml", "kind: restock\nsupply: ../../pom.xml\n")).contains("a file is found from the file that names it, and request is none");
        Wire.Reply other = Wire.post(SERVER, "/api/quote", "application/yaml", "kind: quote\ncatalog: /etc\nrequire: { cores: 8 }\n");
        assertThat(other.status()).as("a catalogue that is named is not looked at").isEqualTo(200);
    }

    @Test
    void whatCannotBeBuiltIsAnAnswer() {
        Wire.Reply reply = Wire.post(SERVER, "/api/quote", JSON, "{\"kind\": \"quote\", \"require\": {\"cores\": 5000}}");
        assertThat(reply.status()).isEqualTo(200);
        assertThat(reply.body()).contains("\"status\": \"impossible\"");
    }
}
