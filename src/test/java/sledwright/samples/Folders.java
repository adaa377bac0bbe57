package sledwright.samples;

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
