package sledwright.input;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;

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
        return failed.getMessage() == null ? failed.getClass().getSimpleName() : failed.getMessage();
    }
}
