package sledwright.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
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
            return whole(path, mostMegabytes, place, faults);
        } catch (NoSuchFileException missing) {
            faults.add(place, "there is no such file");
        } catch (IOException unreadable) {
            faults.add(place, "cannot be read (%s)".formatted(Reason.of(unreadable)));
        }
        return Optional.empty();
    }

    /** A device has no size, and a file may grow while it is read; so the bytes are counted, too. */
    private static Optional<byte[]> whole(Path path, int mostMegabytes, Place place, Faults faults) throws IOException {
        BasicFileAttributes before = Files.readAttributes(path, BasicFileAttributes.class);
        byte[] bytes;
        try (InputStream in = Files.newInputStream(path)) {
            bytes = in.readNBytes(mostMegabytes * 1_000_000 + 1);
        }
        if (bytes.length > mostMegabytes * 1_000_000) {
            faults.add(place, "is larger than %d MB".formatted(mostMegabytes));
            return Optional.empty();
        }
        BasicFileAttributes after = Files.readAttributes(path, BasicFileAttributes.class);
        if (before.isRegularFile() && (before.size() != bytes.length || after.size() != bytes.length
                || !before.lastModifiedTime().equals(after.lastModifiedTime()))) {
            faults.add(place, "was changed while it was read; run it again");
            return Optional.empty();
        }
        return Optional.of(bytes);
    }
}
