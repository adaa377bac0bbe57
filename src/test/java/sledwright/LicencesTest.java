package sledwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * The document of licences names every library that the jar holds, with the licence that its own description states;
 * {@code -Dsledwright.refreshDocs=true} writes it anew. Maven lists the libraries before the tests run.
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
