package sledwright.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.util.Optional;

/**
 * Something to read: bytes, the name that faults call them by, and the folder from which the files are found that they name. What did not
 * come from a file has no folder, so it can name no file.
 */
public final class Source {

    /** What has no name of its own is called so. */
    public static final String UNNAMED = "request";
    /** Whoever writes into a pipe begins sooner. */
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    private final String name;
    /** Empty: it is in no folder. */
    private final Optional<Path> file;
    /** Empty: they are read from the file when asked for. */
    private final Optional<byte[]> bytes;
    /** What a request is called that has no name of its own. */
    private final String plainName;
    /** Whether anybody can look lines up in it. */
    private final boolean hasLines;

    private Source(String name, Optional<Path> file, Optional<byte[]> bytes, String plainName, boolean hasLines) {
        this.name = name;
        this.file = file;
        this.bytes = bytes;
        this.plainName = plainName;
        this.hasLines = hasLines;
    }

    /** A file, named as the user named it; the files that it names are found from its own folder. */
    public static Source of(Path file) {
        return new Source(file.toString(), Optional.of(file), Optional.empty(), file.getFileName().toString().replaceFirst("\\.ya?ml$", ""),
                true);
    }

    /** Bytes that came from elsewhere, such as standard input or a network; they are in no folder. */
    public static Source of(String name, byte[] bytes) {
        return named(name, UNNAMED, bytes);
    }

    /** Bytes of a request that is called so where it has no name of its own. */
    public static Source named(String name, String plainName, byte[] bytes) {
        return new Source(name, Optional.empty(), Optional.of(bytes.clone()), plainName, true);
    }

    /** The same with what was read of it before, however it has changed since. */
    public Source holding(byte[] read) {
        return new Source(name, file, Optional.of(read.clone()), plainName, hasLines);
    }

    /**
     * Bytes of JSON that came from elsewhere.
     *
     * @throws FaultsException when they are not JSON
     */
    public static Source ofJson(String name, byte[] json) {
        return of(name, JsonText.asYaml(name, json));
    }

    /** A text that nobody wrote down, such as what all is said beside; it has no lines that could be looked up. */
    public static Source unwritten(String name, String text) {
        return new Source(name, Optional.empty(), Optional.of(text.getBytes(StandardCharsets.UTF_8)), UNNAMED, false);
    }

    /** What faults call it. */
    public String name() {
        return name;
    }

    /** All of it. */
    public Place place() {
        return Place.of(name);
    }

    /** One line of it. */
    public Place at(int line) {
        return hasLines ? new Place(name, line) : place();
    }

    /** Whether it can name other files. */
    public boolean isFile() {
        return file.isPresent();
    }

    /** What a request is called that has no name of its own: as its file, without the ending. */
    public String plainName() {
        return plainName;
    }

    /**
     * What a value of it names; empty, with a fault, when there can be no such path.
     *
     * @param what    such as {@code folder}
     * @param instead what to do where nothing can be named
     */
    public Optional<Path> beside(Field named, String what, String instead, Faults faults) {
        if (!isFile()) {
            named.fault("a %s is found from the file that names it, and %s is none; %s".formatted(what, name, instead), faults);
            return Optional.empty();
        }
        try {
            return Optional.of(file.get().resolveSibling(named.text()).normalize());
        } catch (InvalidPathException noPath) {
            named.fault("must be the path of a " + what, faults);
            return Optional.empty();
        }
    }

    /** The bytes; empty, with a fault, when they cannot be read. */
    public Optional<byte[]> bytes(int mostMegabytes, Faults faults) {
        if (bytes.isEmpty()) {
            return read(file.orElseThrow(), mostMegabytes, faults);
        }
        if (bytes.get().length > mostMegabytes * 1_000_000) {
            faults.add(place(), tooLarge(mostMegabytes));
            return Optional.empty();
        }
        return Optional.of(bytes.get().clone());
    }

    private static String tooLarge(int mostMegabytes) {
        return "is larger than %s MB".formatted(mostMegabytes);
    }

    private Optional<byte[]> read(Path path, int mostMegabytes, Faults faults) {
        try {
            if (Files.isDirectory(path)) {
                faults.add(place(), "is a folder, a file is needed");
                return Optional.empty();
            }
            if (Files.size(path) > mostMegabytes * 1_000_000L) {
                faults.add(place(), tooLarge(mostMegabytes));
                return Optional.empty();
            }
            return whole(path, mostMegabytes, faults);
        } catch (NoSuchFileException missing) {
            faults.add(place(), "there is no such file");
        } catch (IOException unreadable) {
            faults.add(place(), "cannot be read (%s)".formatted(Reason.of(unreadable)));
        }
        return Optional.empty();
    }

    private static byte[] first(Path path, int most) throws IOException {
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(most);
        }
    }

    /** A device has no size, and a file may grow while it is read; so the bytes are counted, too. */
    private Optional<byte[]> whole(Path path, int mostMegabytes, Faults faults) throws IOException {
        BasicFileAttributes before = Files.readAttributes(path, BasicFileAttributes.class);
        int most = mostMegabytes * 1_000_000 + 1;
        byte[] found = before.isRegularFile() ? first(path, most) : Pipe.read(path, most, PATIENCE);
        if (found.length > mostMegabytes * 1_000_000) {
            faults.add(place(), tooLarge(mostMegabytes));
            return Optional.empty();
        }
        BasicFileAttributes after = Files.readAttributes(path, BasicFileAttributes.class);
        if (before.isRegularFile() && (before.size() != found.length || after.size() != found.length
                || !before.lastModifiedTime().equals(after.lastModifiedTime()))) {
            faults.add(place(), "was changed while it was read; run it again");
            return Optional.empty();
        }
        return Optional.of(found);
    }
}
