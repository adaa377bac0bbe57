package sledwright.web.api;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import sledwright.input.Fault;
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
            return Source.of(NAME, asYaml(bytes));
        }
        if (!YAML.contains(media)) {
            throw RefusedException.of(415, "Content-Type", media, "must be application/yaml or application/json");
        }
        return Source.of(NAME, bytes);
    }

    /** JSON, once it is known to be that, is YAML but for tabs between values and a stroke that is escaped; lines stay where they are. */
    private static byte[] asYaml(byte[] json) {
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            while (parser.nextToken() != null) {
                parser.finishToken();
            }
        } catch (JsonProcessingException broken) {
            int line = broken.getLocation() == null ? 0 : broken.getLocation().getLineNr();
            throw RefusedException.of(List.of(new Fault(NAME, Math.max(0, line), "not readable as JSON: "
                    + broken.getOriginalMessage().replaceAll("\\s+", " "))));
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        StringBuilder yaml = new StringBuilder(json.length);
        boolean inText = false;
        String text = new String(json, StandardCharsets.UTF_8);
        for (int at = 0; at < text.length(); at++) {
            char sign = text.charAt(at);
            if (inText && sign == '\\') {
                at++;
                yaml.append(text.charAt(at) == '/' ? "" : "\\").append(text.charAt(at));
                continue;
            }
            inText ^= sign == '"';
            yaml.append(sign == '\t' ? ' ' : sign);
        }
        return yaml.toString().getBytes(StandardCharsets.UTF_8);
    }
}
