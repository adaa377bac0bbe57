package sledwright.input;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** Why a file could not be read or written, in words. */
public final class Reason {

    private Reason() {
    }

    /** Some exceptions say no more than the file's name, or nothing at all. */
    public static String of(IOException failed) {
        if (failed instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (failed instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (failed instanceof NotDirectoryException) {
            return "a folder was expected";
        }
        if (failed instanceof FileSystemLoopException) {
            return "links lead in a circle";
        }
        if (failed instanceof FileSystemException named && named.getReason() != null) {
            return named.getReason();
        }
        return failed.getMessage() == null ? "the system gives no reason" : failed.getMessage();
    }
}
