package sledwright.input;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Cuts a text of comma-separated values into rows of stripped cells, whatever their columns mean. */
final class CsvCells {

    /** More than any price list has, and less than memory holds. */
    static final int MOST_CELLS = 5_000_000;
    /** What stands further to the right is ignored. */
    static final int MOST_COLUMNS = 1000;
    private static final int LONGEST_CELL = 100_000;

    private static final CsvFactory CSV = CsvFactory.builder()
            .enable(CsvParser.Feature.TRIM_SPACES).enable(CsvParser.Feature.SKIP_EMPTY_LINES)
            .streamReadConstraints(StreamReadConstraints.builder().maxStringLength(LONGEST_CELL).build()).build();

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
        int count = 0;
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
                        count++;
                        if (count > MOST_CELLS) {
                            return new Broken(line, "up to here the file has more than %s cells; split it".formatted(MOST_CELLS));
                        }
                        if (cells.size() < MOST_COLUMNS) {
                            cells.add(parser.getText().strip());
                        }
                    }
                }
            }
            return null;
        } catch (StreamConstraintsException tooLong) {
            return new Broken(line, "a cell of the row has more than %s characters; is a quotation mark missing?".formatted(LONGEST_CELL));
        } catch (JsonProcessingException broken) {
            return new Broken(line, "the row cannot be read, nor what follows it: " + broken.getOriginalMessage());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }
}
