package sledwright.report.text;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Documents in JSON; docs/json.md describes every key. Money has the currency's digits, figures have no trailing zeros.
 *
 * <p>An answer is a record: its components are the keys, {@code pricedOn} as {@code priced_on}, and null is what is absent. Components that
 * stand in the record around them are marked {@code @JsonUnwrapped}. Jackson reads the same records back; to write them by its mapper
 * would cost a short run too much, so that they are written by its generator alone.
 */
public final class Json {

    private static final Pattern LINE_FEEDS = Pattern.compile("\n *");
    private static final JsonFactory FACTORY = new JsonFactory();
    /** What is known of the records that were written. */
    private static final ClassValue<List<Key>> KEYS = new ClassValue<>() {
        @Override
        protected List<Key> computeValue(Class<?> record) {
            List<Key> keys = new ArrayList<>();
            for (RecordComponent component : record.getRecordComponents()) {
                Method accessor = component.getAccessor();
                accessor.setAccessible(true);
                keys.add(new Key(key(component.getName()), accessor, accessor.isAnnotationPresent(JsonUnwrapped.class)));
            }
            return keys;
        }
    };

    private Json() {
    }

    private record Key(String name, Method accessor, boolean unwrapped) {

        Object of(Record record) {
            try {
                return accessor.invoke(record);
            } catch (ReflectiveOperationException impossible) {
                throw new IllegalStateException(impossible);
            }
        }
    }

    /** A record as a document. */
    public static String of(Record answer) {
        return document(answer);
    }

    /** A document whose keys no class has; a map keeps its order. */
    public static String of(Map<String, ?> document) {
        return document(document);
    }

    private static String document(Object whole) {
        StringWriter text = new StringWriter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER).withArrayEmptySeparator("").withObjectEmptySeparator(""))
                .withObjectIndenter(lines).withArrayIndenter(lines);
        try (JsonGenerator out = FACTORY.createGenerator(text)) {
            out.setPrettyPrinter(printer);
            out.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            value(whole, out);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.append('\n').toString();
    }

    /** The keys of a record, within the object that is being written. */
    private static void write(Record record, JsonGenerator out) throws IOException {
        for (Key key : KEYS.get(record.getClass())) {
            Object value = key.of(record);
            if (key.unwrapped()) {
                write((Record) value, out);
            } else {
                out.writeFieldName(key.name());
                value(value, out);
            }
        }
    }

    private static void value(Object value, JsonGenerator out) throws IOException {
        if (value instanceof Record record) {
            out.writeStartObject();
            write(record, out);
            out.writeEndObject();
        } else if (value instanceof Map<?, ?> map) {
            out.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.writeFieldName(entry.getKey().toString());
                value(entry.getValue(), out);
            }
            out.writeEndObject();
        } else if (value instanceof Iterable<?> list) {
            out.writeStartArray();
            for (Object one : list) {
                value(one, out);
            }
            out.writeEndArray();
        } else if (value instanceof BigDecimal number) {
            out.writeNumber(number);
        } else if (value instanceof Integer || value instanceof Long) {
            out.writeNumber(((Number) value).longValue());
        } else if (value instanceof Boolean truth) {
            out.writeBoolean(truth);
        } else if (value instanceof String text) {
            out.writeString(text);
        } else if (value == null) {
            out.writeNull();
        } else {
            throw new IllegalArgumentException("no value of JSON: " + value.getClass());
        }
    }

    /** A text; null, which stands for what is absent, where it is empty. */
    public static String unlessEmpty(String text) {
        return text.isEmpty() ? null : text;
    }

    /** {@code priced_on} for {@code pricedOn}. */
    private static String key(String component) {
        StringBuilder key = new StringBuilder(component.length() + 4);
        for (int at = 0; at < component.length(); at++) {
            char sign = component.charAt(at);
            if (Character.isUpperCase(sign)) {
                key.append('_').append(Character.toLowerCase(sign));
            } else {
                key.append(sign);
            }
        }
        return key.toString();
    }

    /** The same document on one line. No text of it holds a line feed: there they are written as two letters. */
    public static String onOneLine(String document) {
        return LINE_FEEDS.matcher(document.strip()).replaceAll("") + "\n";
    }
}
