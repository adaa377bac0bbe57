package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds that the program's sources stay easy to find and to read. */
class SourcesTest {

    private static final Path MAIN = Path.of("src/main/java");
    private static final int MOST_LINES = 400;
    private static final int MOST_COLUMNS = 140;

    private static List<Path> sources() {
        try (Stream<Path> files = Files.walk(MAIN)) {
            return files.filter(file -> file.toString().endsWith(".java")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void noSimpleNameStandsForTwoClasses() {
        Map<String, List<Path>> byName = sources().stream().filter(file -> !file.endsWith("package-info.java"))
                .collect(Collectors.groupingBy(file -> file.getFileName().toString()));
        assertThat(byName).hasSizeGreaterThan(400);
        assertThat(byName.values()).allSatisfy(files -> assertThat(files).hasSize(1));
    }

    @Test
    void noClassIsLong() {
        assertThat(sources().stream().filter(file -> lines(file).size() > MOST_LINES)).isEmpty();
    }

    @Test
    void noLineIsLong() {
        assertThat(sources().stream().flatMap(file -> lines(file).stream().filter(line -> line.length() > MOST_COLUMNS)
                .map(line -> file + ": " + line))).isEmpty();
    }

    /** {@code %d} and {@code %f} write other digits where a machine speaks another language, so that a figure is put in as it is. */
    @Test
    void noFigureIsWrittenInTheLanguageOfTheMachine() {
        Pattern figure = Pattern.compile("%[-+ 0,(]*\\d*(?:\\.\\d+)?[dfeg](?![a-zA-Z])");
        assertThat(sources().stream().flatMap(file -> lines(file).stream()
                .filter(line -> !line.contains("Locale.ROOT") && figure.matcher(line).find()).map(line -> file + ": " + line))).isEmpty();
    }

    /** Whoever asks on a page has no options to give. Faults of files and reports of the book and of imports are what commands print. */
    @Test
    void onlyWhatCommandsPrintNamesTheirOptions() {
        Pattern option = Pattern.compile("\"[^\"]*--[a-z]");
        List<String> rooms = List.of("cli", "web", "book", "report/book", "report/intake", "catalog", "input", "request");
        assertThat(sources().stream().filter(file -> !file.endsWith("words/Manner.java")
                        && rooms.stream().noneMatch(room -> file.startsWith(MAIN.resolve("sledwright").resolve(room))))
                .flatMap(file -> lines(file).stream().filter(line -> option.matcher(line).find()).map(line -> file + ": " + line))).isEmpty();
    }

    @Test
    void everyPackageSaysWhatItIsFor() {
        assertThat(sources().stream().map(Path::getParent).distinct().filter(folder -> !folder.endsWith("java")))
                .allSatisfy(folder -> assertThat(folder.resolve("package-info.java")).exists());
    }
}
