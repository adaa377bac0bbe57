package sledwright.web.api;

import java.util.Locale;
import java.util.Set;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.web.http.RefusedException;

/** What was sent, as the readers of requests take it. */
public final class RequestBody {

    private static final String NAME = "request";
    private static final Set<String> YAML = Set.of("application/yaml", "application/x-yaml", "text/yaml");
    private static final String JSON = "application/json";

    private RequestBody() {
    }

    /**
     * @param type the header {@code Content-Type}; null: none
     * @throws RefusedException when it is of no known type, or not JSON though it says so
     */
    public static Source of(String type, byte[] bytes) {
        String media = type == null ? "" : type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
        if (media.equals(JSON)) {
            try {
                return Source.ofJson(NAME, bytes);
            } catch (FaultsException broken) {
                throw RefusedException.of(broken.faults());
            }
        }
        if (!YAML.contains(media)) {
            throw RefusedException.of(415, "Content-Type", media, "must be application/yaml or application/json");
        }
        return Source.of(NAME, bytes);
    }
}
