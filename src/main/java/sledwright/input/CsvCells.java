package sledwright.input;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Cuts a text of comma-separated values into rows of stripped cells, whatever their columns mean. */
final class CsvCells {

    private static final CsvFactory CSV = CsvFactory.builder()
            .enable(CsvParser.Feature.TRIM_SPACES).enable(CsvParser.Feature.SKIP_EMPTY_LINES).build();

    /** Takes a row and the line where it begins. */
    interface Each {
        void row(List<String> cells, int line);
    }

    /** Where and why the cutting ended early. */
    record Broken(int line, String problem) {
    }

    private CsvCells() {
    }

    /** Hands on every row; returns what ended it early, or null. */
    static Broken read(String text, char separator, Each each) {
        int line = 1;
        try (CsvParser parser = CSV.createParser(text)) {
            parser.setSchema(CsvSchema.emptySchema().withColumnSeparator(separator));
            List<String> cells = new ArrayList<>();
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                switch (token) {
                    case START_ARRAY -> {
                        cells = new ArrayList<>();
                        line = parser.currentLocation().getLineNr();
                    }
                    case END_ARRAY -> each.row(cells, line);
                    default -> {
                        if (cells.isEmpty()) {
                            line = parser.currentTokenLocation().getLineNr();
                        }
                        cells.add(parser.getText().strip());
                    }
                }
            }
            return null;
        } catch (JsonProcessingException broken) {
            return new Broken(line, "the row cannot be read, nor what follows it: " + broken.getOriginalMessage());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }
}
