package sledwright.catalog.intake;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps imports into one folder apart, of other processes and of other threads. The system gives the lock back when a process ends,
 * however it ends. The empty file that is locked stays: if it were taken away, two could hold the locks of two files of its name.
 */
final class FolderLock implements AutoCloseable {

    private static final String NAME = ".import.lock";
    /** Who may write into the folder, and what is then allowed with the lock's file. */
    private static final Map<PosixFilePermission, Set<PosixFilePermission>> ALLOWED = Map.of(
            PosixFilePermission.OWNER_WRITE, EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE),
            PosixFilePermission.GROUP_WRITE, EnumSet.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE),
            PosixFilePermission.OTHERS_WRITE, EnumSet.of(PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE));
    /** Locks of this process: the system does not keep its threads apart, and takes a lock back when one merely closes such a file. */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final FileChannel channel;

    private FolderLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** The lock; empty when another import has it. */
    static Optional<FolderLock> take(Path folder) throws IOException {
        Path file = folder.toRealPath().resolve(NAME);
        if (!HELD.add(file)) {
            return Optional.empty();
        }
        FileChannel channel = null;
        boolean taken = false;
        try {
            make(file);
            channel = FileChannel.open(file, StandardOpenOption.WRITE);
            taken = channel.tryLock() != null;
            return taken ? Optional.of(new FolderLock(file, channel)) : Optional.empty();
        } finally {
            if (!taken) {
                release(file, channel);
            }
        }
    }

    /** Whoever may write into the folder may take its lock. */
    private static void make(Path file) throws IOException {
        try {
            Files.createFile(file);
        } catch (FileAlreadyExistsException known) {
            return;
        }
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (view == null) {
            return;
        }
        try {
            PosixFileAttributes folder = Files.readAttributes(file.getParent(), PosixFileAttributes.class);
            Set<PosixFilePermission> permissions = EnumSet.noneOf(PosixFilePermission.class);
            ALLOWED.forEach((write, allowed) -> permissions.addAll(folder.permissions().contains(write) ? allowed : Set.of()));
            view.setGroup(folder.group());
            view.setPermissions(permissions);
        } catch (IOException notOurs) {
            // Then others of the group cannot import until it is put right, which the system's message says.
        }
    }

    private static void release(Path file, FileChannel channel) throws IOException {
        try {
            if (channel != null) {
                channel.close();
            }
        } finally {
            HELD.remove(file);
        }
    }

    @Override
    public void close() throws IOException {
        release(file, channel);
    }
}
