package sledwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.input.Reason;
import sledwright.input.WholeFile;
import sledwright.report.text.Screen;

/** Where the result of a run goes: standard output, or a file that is replaced as a whole or not at all. */
final class Output {

    private final Terminal terminal;
    private final Format format;
    private final Optional<Path> file;
    private final Colour colour;

    private Output(Terminal terminal, Format format, Optional<Path> file, Colour colour) {
        this.terminal = terminal;
        this.format = format;
        this.file = file;
        this.colour = colour;
    }

    /** @throws UsageException when the command does not write the format, or the file cannot be written */
    static Output open(Terminal terminal, Format format, Set<Format> written, Optional<Path> file, Colour colour) {
        if (!written.contains(format)) {
            throw new UsageException("--format %s is not written by this command.\nMaybe take one of %s."
                    .formatted(format, written.stream().sorted().map(Format::toString).collect(Collectors.joining(", "))));
        }
        return new Output(terminal, format, file.map(Output::writable), colour);
    }

    /**
     * Somebody who opens a file with that ending expects what it stands for.
     *
     * @throws UsageException when the file's name ends as another format does
     */
    static void requireEnding(Path file, Format format, Set<Format> written) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        for (Format meant : Format.values()) {
            if (meant != format && meant != Format.TEXT && name.endsWith("." + meant)) {
                throw new UsageException("--output %s would be written as %s.\nMaybe %s.".formatted(file, format,
                        written.contains(meant) ? "add --format " + meant : "choose another ending: this command does not write " + meant));
            }
        }
    }

    /** The file behind a name: what a link points to, so that the link stays. */
    private static Path writable(Path named) {
        if (Files.isDirectory(named)) {
            throw new UsageException("--output %s is a folder.\nMaybe name a file in it.".formatted(named));
        }
        try {
            Path target = Files.exists(named) ? named.toRealPath() : named.toAbsolutePath();
            if (isDevice(target)) {
                return target;
            }
            Path folder = target.getParent();
            if (folder == null || !Files.isDirectory(folder)) {
                throw new UsageException("--output %s: there is no folder %s.\nMaybe make it first.".formatted(named, folder));
            }
            if (!Files.isWritable(folder)) {
                throw new UsageException(
                        "--output %s: nothing can be written into folder %s.\nMaybe choose another, or allow writing there."
                        .formatted(named, folder));
            }
            if (Files.exists(target) && !Files.isWritable(target)) {
                throw new UsageException("--output %s is write-protected.\nMaybe choose another file, or allow writing to it."
                        .formatted(named));
            }
            return target;
        } catch (IOException unreachable) {
            throw new UsageException("--output %s cannot be reached (%s).".formatted(named, Reason.of(unreachable)));
        }
    }

    /** Whether it is something that must not be replaced by a file, such as a pipe. */
    private static boolean isDevice(Path target) {
        return Files.exists(target) && !Files.isRegularFile(target);
    }

    /**
     * Writes the result in the run's format.
     *
     * @throws UsageException when it cannot be written in full
     */
    void write(Renderings result) {
        boolean shown = format == Format.TEXT && file.isEmpty();
        Screen screen = shown ? terminal.screen(colour) : new Screen(Screen.LEAST_WIDTH, colour == Colour.ALWAYS);
        byte[] bytes = result.in(format, screen);
        try {
            if (file.isEmpty()) {
                terminal.out().write(bytes);
                terminal.out().flush();
            } else if (isDevice(file.get())) {
                Files.write(file.get(), bytes, StandardOpenOption.WRITE);
            } else {
                WholeFile.replace(file.get(), bytes);
            }
        } catch (IOException failed) {
            throw new UsageException("the result could not be written to %s (%s)."
                    .formatted(file.map(Path::toString).orElse("standard output"), Reason.of(failed)));
        }
    }
}
