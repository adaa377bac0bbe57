package sledwright.web.api;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.report.text.Json;

/** The description of the API for programs that make clients of it: OpenAPI 3.1. */
final class OpenApi {

    static final String ADDRESS = "/api/openapi.json";

    private static final String JSON = "application/json";

    private static final String QUOTE = "The quote as the book has it.";

    private static final Map<String, String> REFUSALS = new LinkedHashMap<>();

    static {
        REFUSALS.put("400", "Something is wrong in the request or its address.");
        REFUSALS.put("401", "Nobody is logged in, or name or password is wrong.");
        REFUSALS.put("403", "Not for this sender.");
        REFUSALS.put("404", "There is nothing of that name.");
        REFUSALS.put("405", "Not with that method.");
        REFUSALS.put("408", "The body did not come in full in time.");
        REFUSALS.put("409", "Overtaken by a newer question of the same line; or the quote does not take that step, or someone was first.");
        REFUSALS.put("413", "The body is too large.");
        REFUSALS.put("415", "The body is of no known type.");
        REFUSALS.put("429", "Too many logins failed.");
        REFUSALS.put("503", "Too many questions wait.");
    }

    /** Made once: whoever asks for it again and again keeps nobody else waiting. */
    static final String DOCUMENT = document();

    private OpenApi() {
    }

    private static String document() {
        Map<String, Object> paths = new LinkedHashMap<>();
        paths.put("/api/health", get("Whether questions are answered."));
        paths.put(ADDRESS, get("This description."));
        for (Inquiry inquiry : Inquiry.ALL) {
            paths.put("/api/" + inquiry.name(), post(inquiry.name(), inquiry.words(), inquiry.keys(),
                    "A request of kind " + inquiry.kind() + ", without a catalogue.",
                    answer("The JSON of the command; also where the answer is that nothing can be built.",
                            object(JSON, media("object"), EventStream.TYPE, media("string")))));
        }
        paths.put("/api/mail", post("mail", MailQuestion.WORDS, MailQuestion.KEYS, "The text of the mail under the key mail.",
                answer("Wishes with their words, and the rest.", object(JSON, media("object")))));
        book(paths);
        links(paths);
        door(paths);
        return Json.of(object("openapi", "3.1.0", "info", object("title", "Sledwright", "version", "1", "description",
                "Cheapest valid server builds from a shop's catalogue: asked, proved and explained."), "paths", paths,
                "components", object("schemas", object("Faults", faults()))));
    }

    private static void book(Map<String, Object> paths) {
        String one = BookHandler.PATH + "/{number}";
        Map<String, Object> whole = post("save", "Answers a request and keeps it with the answer.", BookKeys.SAVE,
                "A request of kind quote or order, without a catalogue.", json(QUOTE));
        whole.put("get", operation("list", "Finds quotes.", BookKeys.LIST, "", json("Quotes by their numbers.")));
        paths.put(BookHandler.PATH, whole);
        paths.put(BookReportHandler.LOST, object("get", operation("lost", "Quotes that came to nothing: why, and by how much they were too"
                + " dear.", BookKeys.LOST, "", json("The JSON of the command."))));
        paths.put(BookReportHandler.DEMAND, object("get", operation("demand", "What was asked for, offered and bought.", BookKeys.DEMAND,
                "", json("The JSON of the command."))));
        paths.put(BookReportHandler.ALLOCATE, post("allocate", "Draws all promises anew from today's stock; nothing is written.",
                BookKeys.ALLOCATE, "", json("The JSON of the command; the header Sledwright-Proposal names it.")));
        paths.put(BookReportHandler.APPLY, post("apply", "Keeps for every promise what it was given: all of it or, where the book or the"
                + " catalogue has moved on, nothing.", BookKeys.APPLY, "", json("The JSON of the command.")));
        paths.put(one, object("parameters", List.of(inPath("number")), "get", operation("show", "A quote exactly as it was saved.",
                BookKeys.SHOW, "", json("The answer of the command quote, as it was saved."))));
        paths.put(one + "/history", object("parameters", List.of(inPath("number")), "get", operation("history",
                "Everything that was done with a quote.", BookKeys.HISTORY, "", json(QUOTE))));
        paths.put(one + "/sheet", object("parameters", List.of(inPath("number")), "get", operation("sheet",
                "The bench sheets of its machines, with lots and without prices.", BookKeys.SHEET, "",
                json("The JSON of the command sheet."))));
        paths.put(one + "/request", object("parameters", List.of(inPath("number")), "get", operation("request", "What a quote answers.",
                BookKeys.HISTORY, "", json("The request as it was handed in, and what was set beside it."))));
        Map<String, Object> step = inPath("step", BookKeys.STEPS.keySet().toArray());
        paths.put(one + "/{step}", object("parameters", List.of(inPath("number"), step), "post",
                operation("step", "Takes a quote further.", BookKeys.ofSteps(), "", json(QUOTE))));
    }

    private static void links(Map<String, Object> paths) {
        Map<String, Object> whole = post("link", "Makes a link for a customer.", List.of(
                OptionKey.texts("may", "What the customer may change, such as require.cores=8..32 or workload=one,another. May stand"
                        + " several times."),
                OptionKey.text("until", "The last day on which it is answered, such as 2026-11-18; 90 days ahead at most. Otherwise 14"
                        + " days."),
                OptionKey.text("customer", "Whose it is. Otherwise the first line of the request's customer.")),
                "A request of kind quote, without a catalogue.", json("Its id, its last day, and its address, which is told this once."));
        whole.put("get", operation("links", "Links that are not over.", List.of(), "", json("Each without its address.")));
        paths.put("/api/links", whole);
        paths.put("/api/links/{id}/end", object("parameters", List.of(inPath("id")), "post",
                operation("end", "Ends a link at once.", List.of(), "", json("An empty object."))));
    }

    /** Only where the server knows its users. */
    private static void door(Map<String, Object> paths) {
        paths.put("/api/me", get("Who is logged in, and the token that a change needs."));
        paths.put("/api/login", post("login", "Begins a session, where the server has users.", List.of(), "Name and password, as JSON.",
                json("Who is logged in, and the token that a change needs.")));
        paths.put("/api/logout", object("post", operation("logout", "Ends the session.", List.of(), "", json("An empty object."))));
    }

    private static Map<String, Object> json(String words) {
        return answer(words, object(JSON, media("object")));
    }

    /** @param values all that it may be; none: anything */
    private static Map<String, Object> inPath(String name, Object... values) {
        Map<String, Object> schema = object("type", "string");
        if (values.length > 0) {
            schema.put("enum", List.of(values));
        }
        return object("name", name, "in", "path", "required", true, "schema", schema);
    }

    /** Keys and values in turn. */
    private static Map<String, Object> object(Object... pairs) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int at = 0; at < pairs.length; at += 2) {
            object.put((String) pairs[at], pairs[at + 1]);
        }
        return object;
    }

    private static Map<String, Object> get(String words) {
        return object("get", object("summary", words, "responses",
                object("200", answer("The answer.", object(JSON, media("object"))))));
    }

    private static Map<String, Object> post(String name, String words, List<OptionKey> keys, String body, Map<String, Object> answer) {
        return object("post", operation(name, words, keys, body, answer));
    }

    /** @param body what is sent; empty: nothing */
    private static Map<String, Object> operation(String name, String words, List<OptionKey> keys, String body, Map<String, Object> answer) {
        Map<String, Object> responses = object("200", answer);
        REFUSALS.forEach((status, why) -> responses.put(status,
                answer(why, object(JSON, object("schema", object("$ref", "#/components/schemas/Faults"))))));
        Map<String, Object> operation = object("operationId", name, "summary", words, "parameters",
                keys.stream().map(OpenApi::parameter).toList());
        if (!body.isEmpty()) {
            operation.put("requestBody", object("required", true, "description", body, "content",
                    object("application/yaml", media("object"), JSON, media("object"))));
        }
        operation.put("responses", responses);
        return operation;
    }

    private static Map<String, Object> parameter(OptionKey key) {
        Map<String, Object> parameter = object("name", key.name(), "in", "query", "description", key.words());
        if (key.shape() == OptionKey.Shape.FLAG) {
            parameter.put("allowEmptyValue", true);
        }
        parameter.put("schema", switch (key.shape()) {
            case TEXTS -> object("type", "array", "items", object("type", "string"));
            case TEXT -> object("type", "string");
            case FIGURE -> object("type", "number");
            case FLAG -> object("type", "boolean");
        });
        return parameter;
    }

    private static Map<String, Object> media(String schema) {
        return object("schema", object("type", schema));
    }

    private static Map<String, Object> answer(String words, Map<String, Object> content) {
        return object("description", words, "content", content);
    }

    private static Map<String, Object> faults() {
        Map<String, Object> properties = object(
                "place", property("What is meant: the request, an option, a header.", "string"),
                "line", property("Its line, from 1; null where there is none.", "integer", "null"),
                "value", property("What stands there; null where there is no single value.", "string", "null"),
                "message", property("What is wrong, and what would be right.", "string"));
        Map<String, Object> fault = object("type", "object", "required", properties.keySet(), "properties", properties);
        return object("type", "object", "required", List.of("faults"), "properties",
                object("faults", object("type", "array", "minItems", 1, "items", fault)));
    }

    private static Map<String, Object> property(String words, String... types) {
        return object("type", List.of(types), "description", words);
    }
}
