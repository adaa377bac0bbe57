package sledwright.input;

import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.events.CollectionEndEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.NodeEvent;
import org.yaml.snakeyaml.events.ScalarEvent;
import org.yaml.snakeyaml.parser.Parser;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;

/** A key of the first level of a YAML text and where it stands, so that its value alone can be changed and all else stays as written. */
public final class YamlKey {

    private final String text;
    private final String key;
    private int depth;
    private boolean atKey = true;
    private boolean found;
    private int from = -1;
    private int reached = -1;
    private int to = -1;

    private YamlKey(String text, String key) {
        this.text = text;
        this.key = key;
    }

    /** The text with another value, written as YAML in one line, and without what is remarked beside it; empty: there is no such key. */
    public static Optional<String> replaced(String text, String key, String value) {
        try {
            return new YamlKey(text, key).replaced(value);
        } catch (YAMLException unreadable) {
            return Optional.empty();
        }
    }

    private Optional<String> replaced(String value) {
        Parser parser = new ParserImpl(new StreamReader(text), new LoaderOptions());
        while (to < 0 && !parser.checkEvent(Event.ID.StreamEnd)) {
            read(parser.getEvent());
        }
        if (to < 0) {
            return Optional.empty();
        }
        String end = text.substring(from, to).endsWith("\n") ? "\n" : "";
        return Optional.of(text.substring(0, from) + ": " + value + end + text.substring(to).replaceFirst("\\A[ \\t]+#[^\\r\\n]*", ""));
    }

    private void read(Event event) {
        if (event instanceof CollectionStartEvent) {
            depth++;
        } else if (event instanceof CollectionEndEvent) {
            depth--;
        } else if (!(event instanceof NodeEvent)) {
            return;
        }
        if (found && event.getEndMark().getIndex() > event.getStartMark().getIndex()) {
            // What ends a block has no width and stands where the next key does.
            reached = place(event.getEndMark());
        }
        if (depth != 1 || event instanceof CollectionStartEvent) {
            return;
        }
        if (atKey) {
            found = event instanceof ScalarEvent scalar && scalar.getValue().equals(key);
            from = found ? place(event.getEndMark()) : from;
        } else if (found) {
            to = Math.max(reached, from);
        }
        atKey = !atKey;
    }

    /** The text counts other than its marks do: these count letters, whatever they take. */
    private int place(Mark mark) {
        return text.offsetByCodePoints(0, mark.getIndex());
    }
}
