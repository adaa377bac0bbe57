package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import org.junit.jupiter.api.Test;

class EventStreamTest {

    private static final URI SERVER = Servers.small().address();
    private static final String YAML = "application/yaml";
    private static final String STREAM = "Accept: text/event-stream";

    private static String plain(String chunked) {
        return chunked.replaceAll("(?m)^[0-9a-f]+\r\n", "").replace("\r\n", "");
    }

    @Test
    void anOrderTellsHowFarItHasComeAndAtLastItsAnswer() {
        String order = "kind: order\nlines:\n  a: { machines: 2, require: { cores: 8 } }\n  b: { machines: 1, require: { memory_gb: 64 } }\n";
        Wire.Reply reply = Wire.post(SERVER, "/api/order", YAML, order, STREAM);
        assertThat(reply.status()).isEqualTo(200);
        assertThat(reply.head()).contains("Content-Type: text/event-stream");
        String events = plain(reply.body());
        assertThat(events).startsWith("event: progress\ndata: {\ndata:   \"price\": ").contains("data:   \"bound\": ", "data:   \"gap\": ", "data:   \"seconds\": ");
        String answer = events.substring(events.indexOf("event: answer\n") + "event: answer\n".length()).replaceAll("(?m)^data: ", "");
        assertThat(answer.strip()).isEqualTo(Wire.post(SERVER, "/api/order", YAML, order).body().strip());
    }

    @Test
    void aStockPlanTellsWhatIsBeingDone() {
        String restock = """
                kind: restock
                horizon_months: 1
                budget: 600
                samples: 20
                depreciation: { platforms: 0.02, processors: 0.035, memory: 0.03, cooling: 0.01 }
                supply: [ { sku: M16, supplier: Fen Surplus, unit_cost: 12.25, lead_days: 3, available: 40 } ]
                classes:
                  - { name: plain, demand: { poisson: 2 }, require: { cores: 8, memory_gb: 64 }, limit: { lead_days: 10 }, margin: 60, loss: 5 }
                """;
        assertThat(plain(Wire.post(SERVER, "/api/restock", YAML, restock, STREAM).body()))
                .startsWith("event: progress\ndata: {\ndata:   \"doing\": \"searching builds for 1 class").contains("event: answer\ndata: {");
    }

    @Test
    void faultsComeAsTheyDoWithoutAStream() {
        Wire.Reply reply = Wire.post(SERVER, "/api/order", YAML, "kind: order\n", STREAM);
        assertThat(reply.status()).isEqualTo(400);
        assertThat(reply.body()).contains("lines must hold at least one line");
        assertThat(plain(Wire.post(SERVER, "/api/quote", YAML, "kind: quote\nrequire: { cores: 8 }\n", STREAM).body())).startsWith("event: answer\n");
    }
}
