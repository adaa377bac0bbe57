package sledwright.book;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Reason;

/** One figure for all files of a catalogue: another wherever a byte of them is another. */
final class CatalogDigest {

    private CatalogDigest() {
    }

    static String of(Path folder) {
        try (Stream<Path> walk = Files.walk(folder)) {
            List<Path> files = walk.filter(file -> file.toString().endsWith(".csv") || file.toString().endsWith(".yaml")).sorted().toList();
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Path file : files) {
                byte[] bytes = Files.readAllBytes(file);
                // The length ends a file: what moves from one to the next changes the figure, too.
                digest.update("%s\n%s\n".formatted(folder.relativize(file), bytes.length).getBytes(StandardCharsets.UTF_8));
                digest.update(bytes);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (IOException unreadable) {
            throw new FaultsException(List.of(new Fault(folder.toString(), 0, "cannot be read (%s)".formatted(Reason.of(unreadable)))));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
