package sledwright.catalog;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A small shop to start from: every file with its comments, all parts invented. */
public final class NewShop {

    /** The files, under the folder. */
    public static final List<String> FILES = List.of("catalog.yaml", "platforms/rack-1.yaml", "processors.csv", "memory.csv", "drives.csv",
            "cards.csv", "extras.csv", "offers.csv", "requests/first-quote.yaml");

    /** Stands in the files for the day of the prices. */
    private static final String DAY = "DAY";

    private NewShop() {
    }

    /**
     * Writes it beside the folder first and then puts it in its place, so that nothing half written is ever there.
     *
     * @param folder that is not there yet, or is empty
     * @param day    the day of its prices
     * @throws FileAlreadyExistsException where the folder holds something
     * @throws NotDirectoryException      where it, or what it is to be in, is a file
     */
    public static void write(Path folder, LocalDate day) throws IOException {
        Path target = folder.toAbsolutePath().normalize();
        requireFree(target);
        try {
            Files.createDirectories(target.getParent());
        } catch (FileAlreadyExistsException file) {
            throw new NotDirectoryException(file.getFile());
        }
        Path made = Files.createTempDirectory(target.getParent(), ".new-shop");
        try {
            for (String file : FILES) {
                Path written = made.resolve(file);
                Files.createDirectories(written.getParent());
                Files.writeString(written, text(file).replace(DAY, day.toString()));
            }
            Files.move(made, target, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            delete(made);
        }
    }

    private static void requireFree(Path target) throws IOException {
        if (Files.exists(target) && !Files.isDirectory(target)) {
            throw new NotDirectoryException(target.toString());
        }
        if (Files.isDirectory(target)) {
            try (Stream<Path> held = Files.list(target)) {
                if (held.findAny().isPresent()) {
                    throw new FileAlreadyExistsException(target.toString());
                }
            }
        }
    }

    private static String text(String file) throws IOException {
        try (InputStream in = NewShop.class.getResourceAsStream("new/" + file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** What is left of it where it did not come to its place. */
    private static void delete(Path made) throws IOException {
        if (Files.exists(made)) {
            try (Stream<Path> left = Files.walk(made)) {
                for (Path one : left.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(one);
                }
            }
        }
    }
}
