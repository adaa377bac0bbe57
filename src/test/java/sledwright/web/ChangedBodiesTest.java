package sledwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bodies and addresses that chance has changed are answered or refused, each with its status, and never break the server. */
class ChangedBodiesTest {

    private static final URI SERVER = Servers.small().address();
    private static final int CASES = 160;
    private static final List<String> PATHS = List.of("/page/hand", "/api/quote", "/api/quote?steps&why-not=M64", "/api/check", "/api/upgrade", "/api/compare?figure=cores",
            "/page/answer?why-not=H2-16", "/page/steps", "/page/chart", "/page/load", "/page/board?rank=1");
    private static final List<String> BODIES = List.of(
            "kind: quote\nname: a\nmachines: 2\nrequire: { cores: 8, memory_gb: 32 }\nlimit: { price: 900, conditions: [used] }\n",
            "{\"kind\": \"quote\", \"require\": {\"cores\": 8, \"storage\": [{\"name\": \"a\", \"usable_gb\": 9, \"level\": 1}]}, \"use\": [\"M16\"]}",
            "kind: build\nplatform: WREN-2\nprocessor: H1-08\nprocessors: 1\ncooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\nmodules: { 1A1: M16 }\n",
            "kind: upgrade\nbuild: { platform: WREN-2, processor: H1-08, processors: 1, cooling: WREN-HS-1, supply: RS-750, supply_count: 1, modules: { 1A1: M16 } }\nrequire: { memory_gb: 64 }\n");
    private static final String SIGNS = "{}[]:,-\"'\n\t &*!|>%@#\\0123456789.eENaninfyx\u00e9\u0000\u2028";

    private static String changed(String text, Random chance) {
        StringBuilder changed = new StringBuilder(text);
        for (int times = 1 + chance.nextInt(3); times > 0; times--) {
            int at = chance.nextInt(changed.length());
            switch (chance.nextInt(4)) {
                case 0 -> changed.deleteCharAt(at);
                case 1 -> changed.insert(at, SIGNS.charAt(chance.nextInt(SIGNS.length())));
                case 2 -> changed.setCharAt(at, SIGNS.charAt(chance.nextInt(SIGNS.length())));
                default -> changed.insert(at, changed.substring(at, Math.min(changed.length(), at + 1 + chance.nextInt(20))));
            }
        }
        return changed.toString();
    }

    @Test
    void everyBodyGetsItsStatus() throws Exception {
        int answered = 0;
        for (int seed = 0; seed < CASES; seed++) {
            Random chance = new Random(seed);
            String path = PATHS.get(chance.nextInt(PATHS.size()));
            String body = changed(BODIES.get(path.matches(".*(check|hand)") ? 2 : path.endsWith("upgrade") ? 3 : chance.nextInt(2)), chance);
            String type = body.startsWith("{") ? "application/json" : "application/yaml";
            Wire.Reply reply = Wire.post(SERVER, path, type, body);
            assertThat(reply.status()).as("seed %s, %s: %s\n%s", seed, path, body, reply.body()).isIn(200, 400, 409);
            answered += reply.status() == 200 ? 1 : 0;
            if (reply.status() != 200) {
                assertThat(new ObjectMapper().readTree(reply.body()).get("faults")).as("seed " + seed).isNotEmpty();
            }
        }
        assertThat(answered).as("some of them are still requests").isGreaterThan(4);
        assertThat(Wire.get(SERVER, "/api/health").status()).isEqualTo(200);
    }
}
