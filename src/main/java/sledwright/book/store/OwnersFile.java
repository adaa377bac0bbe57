package sledwright.book.store;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** Files and folders that their owner alone can read. */
public final class OwnersFile {

    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");

    private OwnersFile() {
    }

    /** A new empty file, which nobody else could read for a moment. */
    public static Path create(Path file) throws IOException {
        return knowsOwners(file.toAbsolutePath().getParent()) ? Files.createFile(file, PosixFilePermissions.asFileAttribute(FILE))
                : Files.createFile(file);
    }

    /** Whether nobody else may do anything with a file, as far as the disk knows owners. */
    public static boolean isClosed(Path file) throws IOException {
        return !knowsOwners(file) || Files.getPosixFilePermissions(file).stream().allMatch(right -> right.name().startsWith("OWNER"));
    }

    /** Takes from all others what they may do with a file. */
    public static void close(Path file) throws IOException {
        if (knowsOwners(file) && !Files.getPosixFilePermissions(file).equals(FILE)) {
            Files.setPosixFilePermissions(file, FILE);
        }
    }

    /** The folder of a file, where it is missing. */
    public static void createFolder(Path file) throws IOException {
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
