package sledwright.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** Reads a whole file. */
public final class FileBytes {

    private FileBytes() {
    }

    /** The bytes; empty, with a fault, when the file cannot be read. */
    public static Optional<byte[]> read(Path path, int mostMegabytes, Faults faults) {
        Place place = Place.of(path.toString());
        try {
            if (Files.isDirectory(path)) {
                faults.add(place, "is a folder, a file is needed");
                return Optional.empty();
            }
            if (Files.size(path) > mostMegabytes * 1_000_000L) {
                faults.add(place, "is larger than %d MB".formatted(mostMegabytes));
                return Optional.empty();
            }
            return Optional.of(Files.readAllBytes(path));
        } catch (NoSuchFileException missing) {
            faults.add(place, "there is no such file");
        } catch (IOException unreadable) {
            faults.add(place, "cannot be read (%s)".formatted(unreadable.getClass().getSimpleName()));
        }
        return Optional.empty();
    }
}
