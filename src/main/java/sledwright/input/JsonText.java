package sledwright.input;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** JSON as the reader of YAML takes it. */
final class JsonText {

    private JsonText() {
    }

    /**
     * JSON, once it is known to be that, is YAML but for tabs between values and a stroke that is escaped; lines stay where they are.
     *
     * @param name how a fault names it
     * @throws FaultsException when it is not JSON
     */
    static byte[] asYaml(String name, byte[] json) {
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            while (parser.nextToken() != null) {
                parser.finishToken();
            }
        } catch (JsonProcessingException broken) {
            int line = broken.getLocation() == null ? 0 : broken.getLocation().getLineNr();
            // Beyond its own limits the library names its own settings.
            throw new FaultsException(List.of(new Fault(name, Math.max(0, line), "not readable as JSON: "
                    + (broken instanceof StreamConstraintsException ? "it is nested too deeply, or a value in it is too long"
                    : broken.getOriginalMessage().replaceAll("\\s+", " ")))));
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
