package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.web.api.Inquiry;

/** What the description says is what the server does. */
class OpenApiTest {

    private static final URI SERVER = Servers.small().address();

    private static JsonNode document() throws Exception {
        Wire.Reply reply = Wire.get(SERVER, "/api/openapi.json");
        assertThat(reply.status()).isEqualTo(200);
        return new ObjectMapper().readTree(reply.body());
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Test
    void everyPathIsServedAndNoOther() throws Exception {
        JsonNode paths = document().get("paths");
        assertThat(names(paths)).hasSize(Inquiry.ALL.size() + 18);
        for (String path : names(paths)) {
            // The others have tests of their own.
            if (path.matches("/api/(book|links|me|login|logout).*")) {
                continue;
            }
            assertThat(names(paths.get(path))).hasSize(1);
            boolean get = paths.get(path).has("get");
            assertThat(Wire.get(SERVER, path).status()).as(path).isEqualTo(get ? 200 : 405);
            assertThat(Wire.post(SERVER, path, "application/json", "{}").status()).as(path).isEqualTo(get ? 405 : 400);
        }
        assertThat(Wire.post(SERVER, "/api/sheet", "application/json", "{}").status()).isEqualTo(404);
    }

    @Test
    void theBookIsDescribed() throws Exception {
        JsonNode paths = document().get("paths");
        List<String> book = names(paths).stream().filter(path -> path.startsWith("/api/book")).toList();
        assertThat(book).containsExactly("/api/book", "/api/book/lost", "/api/book/demand", "/api/book/allocate", "/api/book/allocate/apply", "/api/book/{number}", "/api/book/{number}/history", "/api/book/{number}/sheet", "/api/book/{number}/request", "/api/book/{number}/{step}");
        JsonNode steps = paths.at("/~1api~1book~1{number}~1{step}/parameters/1/schema/enum");
        assertThat(steps).hasSize(10);
        for (JsonNode step : steps) {
            Wire.Reply reply = Wire.post(SERVER, "/api/book/2026-0001/" + step.asText() + "?unknown", "application/json", "");
            assertThat(reply.body()).as(step.asText()).contains("is no option of this question");
        }
        for (String path : List.of("/api/book/allocate", "/api/book/allocate/apply")) {
            assertThat(Wire.post(SERVER, path + "?unknown", "application/json", "").body()).as(path).contains("is no option of this question");
            assertThat(paths.get(path).get("post").toString()).contains("time-limit", "seed", "today", "The JSON of the command");
        }
        for (String path : book.stream().filter(path -> paths.get(path).has("get")).toList()) {
            for (JsonNode key : paths.get(path).get("get").get("parameters")) {
                String value = key.get("schema").get("type").asText().equals("number") ? "1" : "2026-11-18";
                assertThat(Wire.get(SERVER, path.replace("{number}", "2026-0001") + "?" + key.get("name").asText() + "=" + value).body())
                        .as(path + key).doesNotContain("is no option of this question");
            }
            assertThat(paths.get(path).get("get").get("responses").get("200").get("description").asText()).endsWith(".");
        }
        assertThat(paths.toString()).contains("Answers a request and keeps it with the answer.", "Finds quotes.", "Quotes by their numbers.",
                "The answer of the command quote, as it was saved.", "Quotes that came to nothing: why, and by how much they were too dear.", "What was asked for, offered and bought.",
                "Draws all promises anew from today's stock; nothing is written.", "The JSON of the command; the header Sledwright-Proposal names it.",
                "Keeps for every promise what it was given: all of it or, where the book or the catalogue has moved on, nothing.", "The JSON of the command.",
                "The draw that was seen, by the header Sledwright-Proposal of its answer. Otherwise stock is drawn now.", "How many months up to today; needed.",
                "json, text, csv or xlsx. Otherwise json.", "json or csv. Otherwise json.", "The request as it was handed in, and what was set beside it.", "The quote as the book has it.",
                "Overtaken by a newer question of the same line; or the quote does not take that step, or someone was first.");
    }

    @Test
    void linksAndLoginsAreDescribed() throws Exception {
        assertThat(document().get("paths").toString()).contains("Makes a link for a customer.", "Links that are not over.", "Each without its address.", "Ends a link at once.",
                "What the customer may change, such as require.cores=8..32 or workload=one,another. May stand several times.",
                "The last day on which it is answered, such as 2026-11-18; 90 days ahead at most. Otherwise 14 days.",
                "Its id, its last day, and its address, which is told this once.", "Who is logged in, and the token that a change needs.",
                "Begins a session, where the server has users.", "Name and password, as JSON.", "Ends the session.", "An empty object.");
    }

    /** A key that is known is not among the faults; one that is not, is. */
    @Test
    void everyKeyIsTaken() throws Exception {
        JsonNode paths = document().get("paths");
        for (Inquiry inquiry : Inquiry.ALL) {
            String path = "/api/" + inquiry.name();
            for (JsonNode key : paths.get(path).get("post").get("parameters")) {
                String value = switch (key.get("schema").get("type").asText()) {
                    case "number" -> "1";
                    case "boolean" -> "true";
                    default -> "x";
                };
                assertThat(Wire.post(SERVER, path + "?" + key.get("name").asText() + "=" + value, "application/json", "{}").body())
                        .as(key.toString()).doesNotContain("is no option of this question");
                assertThat(key.get("description").asText()).endsWith(".");
            }
            assertThat(Wire.post(SERVER, path + "?unknown=1", "application/json", "{}").body()).contains("is no option of this question");
        }
    }

    @Test
    void mailsAreDescribed() throws Exception {
        JsonNode mail = document().at("/paths/~1api~1mail/post");
        assertThat(mail.at("/parameters/0/description").asText()).isEqualTo("Read it as on this day, such as 2026-11-18, from which \"by Thursday\" is counted.");
        assertThat(mail.toString()).contains("What a customer's mail asks for, each wish with its words, and what of it was not understood.",
                "The text of the mail under the key mail.", "Wishes with their words, and the rest.");
    }

    @Test
    void refusalsAreOfTheShapeThatIsDescribed() throws Exception {
        JsonNode fault = document().at("/components/schemas/Faults/properties/faults/items");
        JsonNode said = new ObjectMapper().readTree(Wire.post(SERVER, "/api/quote", "application/json", "{}").body()).get("faults").get(0);
        assertThat(names(said)).isEqualTo(names(fault.get("properties")));
        List<String> statuses = names(document().at("/paths/~1api~1quote/post/responses"));
        assertThat(statuses).contains("200", "400", "403", "405", "408", "409", "413", "415", "503");
    }
}
