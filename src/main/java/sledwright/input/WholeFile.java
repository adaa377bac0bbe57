package sledwright.input;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** Writes a file whole or not at all: beside its target first, then in its place. */
public final class WholeFile {

    private static final int MOST_NAMES = 1000;

    private WholeFile() {
    }

    /** @throws IOException when it cannot be written; what stood there before then still does */
    public static void replace(Path target, byte[] bytes) throws IOException {
        Path fresh = beside(target);
        try {
            write(fresh, bytes);
            if (Files.exists(target) && Files.getFileStore(target).supportsFileAttributeView("posix")) {
                Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(target);
                Files.setPosixFilePermissions(fresh, permissions);
            }
            try {
                Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException coarse) {
                Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    /** Down to the disk: else a machine that stops could find the new name without its content. */
    private static void write(Path fresh, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.force(true);
        }
    }

    /** A new empty file next to the target, with the rights that any new file gets. */
    private static Path beside(Path target) throws IOException {
        for (int number = 0; ; number++) {
            Path fresh = target.resolveSibling(".%s.%s.%s.new".formatted(target.getFileName(), ProcessHandle.current().pid(), number));
            try {
                return Files.createFile(fresh);
            } catch (FileAlreadyExistsException taken) {
                if (number == MOST_NAMES) {
                    throw taken;
                }
            }
        }
    }
}
