package sledwright.book.store;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** Files and folders that their owner alone can read. */
final class OwnersFile {

    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");

    private OwnersFile() {
    }

    /** A new empty file, which nobody else could read for a moment. */
    static Path create(Path file) throws IOException {
        return knowsOwners(file.toAbsolutePath().getParent()) ? Files.createFile(file, PosixFilePermissions.asFileAttribute(FILE))
                : Files.createFile(file);
    }

    /** Takes from all others what they may do with a file. */
    static void close(Path file) throws IOException {
        if (knowsOwners(file) && !Files.getPosixFilePermissions(file).equals(FILE)) {
            Files.setPosixFilePermissions(file, FILE);
        }
    }

    /** The folder of a file, where it is missing. */
    static void createFolder(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Path known = folder;
        while (!Files.exists(known)) {
            known = known.getParent();
        }
        if (knowsOwners(known)) {
            Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(FOLDER));
        } else {
            Files.createDirectories(folder);
        }
    }

    private static boolean knowsOwners(Path existing) throws IOException {
        FileStore store = Files.getFileStore(existing);
        return store.supportsFileAttributeView("posix");
    }
}
