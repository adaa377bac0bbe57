package sledwright.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.stream.Stream;

/** Folders of sample files, to be changed by a test. */
public final class Folders {

    /** A small sound catalogue. */
    public static final Path SHOP = Path.of("src/test/resources/shop");

    private Folders() {
    }

    /** A copy of the small catalogue, whose quotes hold for two weeks. */
    public static Path shopOfTwoWeeks(Path to) throws IOException {
        copy(SHOP, to);
        Files.writeString(to.resolve("catalog.yaml"), "\ndocument: { valid_days: 14 }\n", StandardOpenOption.APPEND);
        return to;
    }

    /** A request of a folder's shop, beside it. */
    public static Path nodeOf(Path folder) throws IOException {
        return Files.writeString(folder.resolve("node.yaml"), "kind: quote\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
    }

    /** Puts other words into a file, which must have the old ones. */
    public static void change(Path file, String old, String fresh) throws IOException {
        String text = Files.readString(file);
        assertThat(text).contains(old);
        Files.writeString(file, text.replace(old, fresh));
    }

    /** A copy of every file under a folder. */
    public static Path copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
        return to;
    }
}
