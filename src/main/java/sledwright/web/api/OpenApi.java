package sledwright.web.api;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.report.text.Json;

/** The description of the API for programs that make clients of it: OpenAPI 3.1. */
final class OpenApi {

    static final String ADDRESS = "/api/openapi.json";

    private static final Map<String, String> REFUSALS = new LinkedHashMap<>();

    static {
        REFUSALS.put("400", "Something is wrong in the request or its address.");
        REFUSALS.put("403", "Not for this sender.");
        REFUSALS.put("405", "Not with that method.");
        REFUSALS.put("408", "The body did not come in full in time.");
        REFUSALS.put("409", "Overtaken by a newer question of the same line.");
        REFUSALS.put("413", "The body is too large.");
        REFUSALS.put("415", "The body is of no known type.");
        REFUSALS.put("503", "Too many questions wait.");
    }

    private final JsonGenerator out;

    private OpenApi(JsonGenerator out) {
        this.out = out;
    }

    static String document() {
        return Json.document(out -> new OpenApi(out).write());
    }

    private void write() throws IOException {
        out.writeStringField("openapi", "3.1.0");
        out.writeObjectFieldStart("info");
        text("title", "Sledwright");
        text("version", "1");
        text("description", "Cheapest valid server builds from a shop's catalogue: asked, proved and explained.");
        out.writeEndObject();
        out.writeObjectFieldStart("paths");
        get("/api/health", "Whether questions are answered.");
        get(ADDRESS, "This description.");
        for (Inquiry inquiry : Inquiry.ALL) {
            post(inquiry.name(), inquiry.words(), inquiry.keys(), "A request of kind " + inquiry.kind() + ", without a catalogue.",
                    "The JSON of the command; also where the answer is that nothing can be built.", true);
        }
        post("mail", MailQuestion.WORDS, MailQuestion.KEYS, "The text of the mail under the key mail.",
                "Wishes with their words, and the rest.", false);
        out.writeEndObject();
        out.writeObjectFieldStart("components");
        out.writeObjectFieldStart("schemas");
        faults();
        out.writeEndObject();
        out.writeEndObject();
    }

    private void text(String key, String value) throws IOException {
        out.writeStringField(key, value);
    }

    private void get(String path, String words) throws IOException {
        out.writeObjectFieldStart(path);
        out.writeObjectFieldStart("get");
        text("summary", words);
        out.writeObjectFieldStart("responses");
        answer("200", "The answer.");
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
    }

    private void post(String name, String words, List<OptionKey> keys, String body, String answer, boolean streams) throws IOException {
        out.writeObjectFieldStart("/api/" + name);
        out.writeObjectFieldStart("post");
        text("operationId", name);
        text("summary", words);
        out.writeArrayFieldStart("parameters");
        for (OptionKey key : keys) {
            parameter(key);
        }
        out.writeEndArray();
        out.writeObjectFieldStart("requestBody");
        out.writeBooleanField("required", true);
        text("description", body);
        out.writeObjectFieldStart("content");
        media("application/yaml", "object");
        media("application/json", "object");
        out.writeEndObject();
        out.writeEndObject();
        out.writeObjectFieldStart("responses");
        out.writeObjectFieldStart("200");
        text("description", answer);
        out.writeObjectFieldStart("content");
        media("application/json", "object");
        if (streams) {
            media(EventStream.TYPE, "string");
        }
        out.writeEndObject();
        out.writeEndObject();
        for (Map.Entry<String, String> refusal : REFUSALS.entrySet()) {
            refusal(refusal.getKey(), refusal.getValue());
        }
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
    }

    private void parameter(OptionKey key) throws IOException {
        out.writeStartObject();
        text("name", key.name());
        text("in", "query");
        text("description", key.words());
        if (key.shape() == OptionKey.Shape.FLAG) {
            out.writeBooleanField("allowEmptyValue", true);
        }
        out.writeObjectFieldStart("schema");
        switch (key.shape()) {
            case TEXTS -> {
                text("type", "array");
                out.writeObjectFieldStart("items");
                text("type", "string");
                out.writeEndObject();
            }
            case TEXT -> text("type", "string");
            case FIGURE -> text("type", "number");
            case FLAG -> text("type", "boolean");
        }
        out.writeEndObject();
        out.writeEndObject();
    }

    private void media(String type, String schema) throws IOException {
        out.writeObjectFieldStart(type);
        out.writeObjectFieldStart("schema");
        text("type", schema);
        out.writeEndObject();
        out.writeEndObject();
    }

    private void answer(String status, String words) throws IOException {
        out.writeObjectFieldStart(status);
        text("description", words);
        out.writeObjectFieldStart("content");
        media("application/json", "object");
        out.writeEndObject();
        out.writeEndObject();
    }

    private void refusal(String status, String words) throws IOException {
        out.writeObjectFieldStart(status);
        text("description", words);
        out.writeObjectFieldStart("content");
        out.writeObjectFieldStart("application/json");
        out.writeObjectFieldStart("schema");
        text("$ref", "#/components/schemas/Faults");
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
    }

    private void faults() throws IOException {
        out.writeObjectFieldStart("Faults");
        text("type", "object");
        required("faults");
        out.writeObjectFieldStart("properties");
        out.writeObjectFieldStart("faults");
        text("type", "array");
        out.writeNumberField("minItems", 1);
        out.writeObjectFieldStart("items");
        text("type", "object");
        required("place", "line", "value", "message");
        out.writeObjectFieldStart("properties");
        property("place", "What is meant: the request, an option, a header.", "string");
        property("line", "Its line, from 1; null where there is none.", "integer", "null");
        property("value", "What stands there; null where there is no single value.", "string", "null");
        property("message", "What is wrong, and what would be right.", "string");
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
        out.writeEndObject();
    }

    private void required(String... keys) throws IOException {
        out.writeArrayFieldStart("required");
        for (String key : keys) {
            out.writeString(key);
        }
        out.writeEndArray();
    }

    private void property(String key, String words, String... types) throws IOException {
        out.writeObjectFieldStart(key);
        out.writeArrayFieldStart("type");
        for (String type : types) {
            out.writeString(type);
        }
        out.writeEndArray();
        text("description", words);
        out.writeEndObject();
    }
}
