package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * The document of licences names every library that the jar holds, with the licence that its own description states;
 * {@code -Dsledwright.refreshDocs=true} writes it again. Maven lists the libraries before the tests run.
 */
class LicencesTest {

    private static final Path DOCUMENT = Path.of("docs/licences.md");
    private static final Path CLASS_PATH = Path.of("target/runtime-classpath.txt");

    /** A library's description, and those that it inherits from. */
    private static final class Pom {

        private final Path file;
        private final Element project;

        Pom(Path file) {
            this.file = file;
            try {
                project = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile()).getDocumentElement();
            } catch (Exception unreadable) {
                throw new AssertionError(file.toString(), unreadable);
            }
        }

        private static List<Element> children(Element element, String name) {
            List<Element> found = new ArrayList<>();
            NodeList nodes = element.getChildNodes();
            for (int i = 0; i < nodes.getLength(); i++) {
                Node node = nodes.item(i);
                if (node instanceof Element child && child.getTagName().equals(name)) {
                    found.add(child);
                }
            }
            return found;
        }

        private static String text(Element element, String name) {
            return children(element, name).stream().findFirst().map(child -> child.getTextContent().strip()).orElse("");
        }

        private List<Element> parent() {
            return children(project, "parent");
        }

        String group() {
            String own = text(project, "groupId");
            return own.isEmpty() ? text(parent().get(0), "groupId") : own;
        }

        String name() {
            return group() + ":" + text(project, "artifactId");
        }

        String licence() {
            List<String> own = children(project, "licenses").stream().flatMap(all -> children(all, "license").stream())
                    .map(licence -> text(licence, "name").replaceAll("\\s+", " ")).toList();
            return own.isEmpty() ? inherited() : String.join(" or ", own);
        }

        private String inherited() {
            Element parent = parent().stream().findFirst().orElseThrow(() -> new AssertionError(file + " states no licence"));
            Path repository = file.getParent().getParent().getParent();
            for (String ignored : group().split("\\.")) {
                repository = repository.getParent();
            }
            String artifact = text(parent, "artifactId");
            String version = text(parent, "version");
            return new Pom(repository.resolve(text(parent, "groupId").replace('.', '/')).resolve(artifact).resolve(version)
                    .resolve(artifact + "-" + version + ".pom")).licence();
        }
    }

    /**
     * In one jar, files of one name are one file; so what is neither of the Apache licence nor under a name of its own has its text under
     * the name of its group.
     */
    @Test
    void everyNoticeThatMustGoAlongIsInTheJar() throws IOException {
        Set<String> told = new TreeSet<>();
        for (String jar : Files.readString(CLASS_PATH).strip().split(File.pathSeparator)) {
            Pom pom = new Pom(Path.of(jar.replaceFirst("\\.jar$", ".pom")));
            if (pom.licence().contains("Apache") || pom.licence().contains("Lesser")) {
                continue;
            }
            told.add(pom.group());
            try (InputStream notice = LicencesTest.class.getResourceAsStream("/META-INF/licences/" + pom.group() + ".txt")) {
                assertThat(notice).as("the notice of " + pom.name()).isNotNull();
                String text = new String(notice.readAllBytes(), StandardCharsets.UTF_8);
                assertThat(text).as(pom.name()).containsPattern("Copyright \\(c\\) \\d{4}").containsPattern("(?i)\"as\\s+is\"");
                assertThat(text).as("what the library itself has").contains(ownNotice(Path.of(jar)).strip());
            }
        }
        assertThat(told).contains("org.slf4j", "org.codehaus.woodstox", "org.ojalgo");
    }

    private static String ownNotice(Path jar) throws IOException {
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            for (String name : List.of("META-INF/LICENSE", "META-INF/LICENSE.txt")) {
                if (zip.getEntry(name) != null) {
                    return new String(zip.getInputStream(zip.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
                }
            }
            return "";
        }
    }

    @Test
    void everyLibraryOfTheJarIsListed() throws IOException {
        TreeSet<String> rows = new TreeSet<>();
        for (String jar : Files.readString(CLASS_PATH).strip().split(File.pathSeparator)) {
            Pom pom = new Pom(Path.of(jar.replaceFirst("\\.jar$", ".pom")));
            rows.add("| `%s` | %s |\n".formatted(pom.name(), pom.licence()));
        }
        assertThat(rows).hasSizeGreaterThan(5);
        String today = """
                # Licences

                The libraries that `sledwright.jar` holds, and the licence that each states of itself. Their own notices are in the jar under `META-INF`.
                The build changes how classes of `org.optaplanner` and `picocli` call lambdas, join strings and are checked (`DirectCalls`), and nothing of what they do.
                Made from the build by `LicencesTest`.

                | library | licence |
                |---|---|
                """ + String.join("", rows);
        if (Boolean.getBoolean("sledwright.refreshDocs")) {
            Files.writeString(DOCUMENT, today);
        }
        assertThat(Files.readString(DOCUMENT)).as("refresh it: mvn -q test -Dtest=LicencesTest -Dsledwright.refreshDocs=true").isEqualTo(today);
    }
}
