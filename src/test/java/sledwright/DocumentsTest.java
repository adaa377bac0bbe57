package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the documents point to is there: files, headings, packages and classes. */
class DocumentsTest {

    private static final Path GUIDE = Path.of("DEVELOPERS.md");
    private static final Path MAIN = Path.of("src/main/java/sledwright");
    private static final Path TESTS = Path.of("src/test/java/sledwright");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]*)(?:#([^)]*))?\\)");
    private static final Pattern CLASS = Pattern.compile("`(?:[a-z.]+\\.|@)?([A-Z][A-Za-z]*[a-z][A-Za-z]*)`");
    private static final Pattern CHOSEN_TEST = Pattern.compile("-Dtest='?(\\w+)(\\*?)");
    private static final Pattern PACKAGE_ROW = Pattern.compile("(?m)^\\| `([a-z]+)` \\|");

    static Stream<Path> documents() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("docs"))) {
            return Stream.concat(Stream.of(Path.of("README.md"), GUIDE), files.filter(file -> file.toString().endsWith(".md")).sorted().toList().stream());
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void linksLeadSomewhere(Path document) throws IOException {
        LINK.matcher(Files.readString(document)).results().forEach(link -> {
            Path target = link.group(1).isEmpty() ? document : document.resolveSibling(link.group(1)).normalize();
            if (!link.group(1).startsWith("http")) {
                assertThat(target).as("%s links to %s", document, link.group()).exists();
                if (link.group(2) != null) {
                    assertThat(anchors(target)).as("%s links to %s", document, link.group()).contains(link.group(2));
                }
            }
        });
    }

    /** A document that nothing leads to is not read. */
    @Test
    void theReadmeLeadsToEveryDocument() throws IOException {
        Set<String> linked = LINK.matcher(Files.readString(Path.of("README.md"))).results().map(link -> link.group(1)).collect(Collectors.toSet());
        assertThat(documents().map(Path::toString).filter(name -> !name.equals("README.md"))).isSubsetOf(linked);
    }

    @Test
    void theGuideHasEveryPackage() throws IOException {
        List<String> rows = PACKAGE_ROW.matcher(Files.readString(GUIDE)).results().map(row -> row.group(1)).toList();
        try (Stream<Path> folders = Files.list(MAIN)) {
            assertThat(rows).containsExactlyInAnyOrderElementsOf(folders.map(folder -> folder.getFileName().toString()).toList());
        }
    }

    @Test
    void theGuideNamesClassesThatExist() throws IOException {
        String text = Files.readString(GUIDE);
        Set<String> named = CLASS.matcher(text).results().map(name -> name.group(1)).collect(Collectors.toCollection(TreeSet::new));
        assertThat(named).hasSizeGreaterThan(20).isSubsetOf(classes());
    }

    @ParameterizedTest
    @MethodSource("documents")
    void testsThatAreToBeRunExist(Path document) throws IOException {
        Set<String> classes = classes();
        CHOSEN_TEST.matcher(Files.readString(document)).results().forEach(chosen -> assertThat(classes).as("%s: %s", document, chosen.group())
                .anyMatch(name -> chosen.group(2).isEmpty() ? name.equals(chosen.group(1)) : name.startsWith(chosen.group(1))));
    }

    private static Set<String> classes() throws IOException {
        try (Stream<Path> ours = Files.walk(MAIN); Stream<Path> tests = Files.walk(TESTS)) {
            return Stream.concat(ours, tests).map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".java"))
                    .map(name -> name.replace(".java", "")).collect(Collectors.toSet());
        }
    }

    /** The names that headings can be linked by. */
    private static List<String> anchors(Path document) {
        try (Stream<String> lines = Files.lines(document)) {
            return lines.filter(line -> line.startsWith("#")).map(line -> line.replaceFirst("#+ ", "").toLowerCase(Locale.ROOT)
                    .replaceAll("[^a-z0-9 _-]", "").replace(' ', '-')).toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
