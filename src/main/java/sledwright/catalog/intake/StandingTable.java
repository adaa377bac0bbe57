package sledwright.catalog.intake;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Place;
import sledwright.input.Source;
import sledwright.input.WholeFile;

/**
 * A table of a catalogue as it stood when an import was worked out, and the way to put another in its place.
 *
 * @param bytes  its file; empty where there is none yet
 * @param others what the catalogue's other files looked like, with which the import was found to agree
 */
record StandingTable(Path folder, CatalogTable table, Optional<byte[]> bytes, Map<Path, Stamp> others) {

    private static final int MOST_MEGABYTES = 64;
    private static final int MOST_BACKUPS = 1000;

    /** What changes when a file does. */
    record Stamp(long size, FileTime modified) {
    }

    StandingTable {
        others = Map.copyOf(others);
    }

    /** To be called before anything else is read of the catalogue. */
    static StandingTable of(Path folder, CatalogTable table, Faults faults) {
        return new StandingTable(folder, table, read(folder.resolve(table.file()), faults), stamps(folder, table));
    }

    private static Optional<byte[]> read(Path file, Faults faults) {
        return Files.exists(file) ? Source.of(file).bytes(MOST_MEGABYTES, faults) : Optional.empty();
    }

    private static Map<Path, Stamp> stamps(Path folder, CatalogTable table) {
        Map<Path, Stamp> stamps = new TreeMap<>();
        for (Path file : CatalogReader.files(folder)) {
            try {
                if (!file.equals(folder.resolve(table.file()))) {
                    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
                    stamps.put(file, new Stamp(now.size(), now.lastModifiedTime()));
                }
            } catch (IOException gone) {
                // It then has no stamp, which differs from any.
            }
        }
        return stamps;
    }

    /**
     * Writes the table: the old file is kept beside it, and the new one takes its place as a whole.
     *
     * @return where the old file is kept; empty where there was none
     * @throws FaultsException when another import is writing, or the catalogue is no longer as it was read
     * @throws IOException     when something cannot be written; the table is then as it was
     */
    Optional<Path> replace(String text) throws IOException {
        Path named = folder.resolve(table.file());
        Path file = Files.exists(named) ? named.toRealPath() : folder.toRealPath().resolve(table.file());
        Optional<FolderLock> taken = FolderLock.take(file.getParent());
        if (taken.isEmpty()) {
            throw notWritten(file, "another import is writing");
        }
        try (FolderLock lock = taken.get()) {
            requireUnchanged(file);
            Optional<Path> kept = bytes.isPresent() ? Optional.of(keep(file, bytes.get())) : Optional.empty();
            try {
                WholeFile.replace(file, text.getBytes(StandardCharsets.UTF_8));
            } catch (IOException failed) {
                if (kept.isPresent()) {
                    Files.deleteIfExists(kept.get());
                }
                throw failed;
            }
            return kept;
        }
    }

    private void requireUnchanged(Path file) {
        Faults faults = new Faults();
        Optional<byte[]> now = read(file, faults);
        faults.throwIfAny();
        if (now.isPresent() != bytes.isPresent() || now.isPresent() && !Arrays.equals(now.get(), bytes.get())) {
            throw notWritten(file, "was changed while it was read");
        }
        Map<Path, Stamp> today = stamps(folder, table);
        if (!today.equals(others)) {
            TreeMap<Path, Stamp> all = new TreeMap<>(others);
            all.putAll(today);
            Path changed = all.keySet().stream().filter(path -> !Objects.equals(others.get(path), today.get(path))).findFirst()
                    .orElseThrow();
            throw notWritten(changed, "was changed while it was read");
        }
    }

    private static FaultsException notWritten(Path file, String why) {
        return new FaultsException(List.of(new Fault(Place.of(file.toString()), why + "; nothing was written: run it again")));
    }

    /** Under the first name that is free: offers.csv.bak, offers.csv.bak2 ... */
    private static Path keep(Path file, byte[] bytes) throws IOException {
        for (int number = 1; number <= MOST_BACKUPS; number++) {
            Path name = file.resolveSibling(file.getFileName() + ".bak" + (number == 1 ? "" : String.valueOf(number)));
            try {
                Files.createFile(name);
            } catch (FileAlreadyExistsException taken) {
                continue;
            }
            try {
                WholeFile.replace(name, bytes);
                return name;
            } catch (IOException failed) {
                Files.deleteIfExists(name);
                throw failed;
            }
        }
        throw new IOException("%s old copies stand beside %s; move them away".formatted(MOST_BACKUPS, file));
    }
}
