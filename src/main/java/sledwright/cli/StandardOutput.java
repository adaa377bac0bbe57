package sledwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The process's standard output. Not {@link System#out}, which keeps silent about what it could not write. */
final class StandardOutput extends FilterOutputStream {

    /** Of the mode that POSIX gives a file: its kind, and that of a pipe. */
    private static final int KIND = 0170000;
    private static final int PIPE = 0010000;

    /** Whoever reads the results has stopped, as {@code head} does when it has seen enough. */
    static final class ReaderGoneException extends RuntimeException {
    }

    private final boolean pipe;

    StandardOutput() {
        super(new FileOutputStream(FileDescriptor.out));
        pipe = isPipe(Path.of("/dev/fd/1"));
    }

    private static boolean isPipe(Path file) {
        try {
            return ((int) Files.getAttribute(file, "unix:mode") & KIND) == PIPE;
        } catch (IOException | RuntimeException notOfThisSystem) {
            return false;
        }
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    /** A pipe fails for no other reason than that nobody reads it. */
    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException failed) {
            if (pipe) {
                throw new ReaderGoneException();
            }
            throw failed;
        }
    }
}
