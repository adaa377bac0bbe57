package sledwright.catalog.intake;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.TableRows;
import sledwright.input.CsvTable;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Grid;
import sledwright.input.GridReader;
import sledwright.input.Place;
import sledwright.input.Source;
import sledwright.input.WholeFile;

/**
 * A supplier's list laid over one table of a catalogue, held to be sound as a whole, not yet written.
 *
 * @param folder    the catalogue's folder
 * @param changes   what is new or different, in the order of the list
 * @param unchanged how many rows of the list say what stands there already
 * @param refused   rows of the list that cannot be taken, and why
 * @param standing  the table's file as it was read; empty where there is none yet
 * @param text      the table's file as it would be
 */
public record CatalogImport(Path folder, CatalogTable table, List<Change> changes, int unchanged, List<Fault> refused,
                            Optional<byte[]> standing, String text) {

    private static final int MOST_MEGABYTES = 64;
    private static final int MOST_BACKUPS = 1000;

    public CatalogImport {
        changes = List.copyOf(changes);
        refused = List.copyOf(refused);
    }

    /**
     * Lays a list over a table.
     *
     * @param list    the supplier's list
     * @param mapping which of its columns is which of ours; empty: it has our headings
     * @param sheet   the sheet of a workbook; empty: as the mapping says, or the only one
     * @throws FaultsException with every fault, when the list or its mapping cannot be read, or the catalogue would have faults
     */
    public static CatalogImport of(Path folder, CatalogTable table, Source list, Optional<Source> mapping, Optional<String> sheet) {
        Faults faults = new Faults();
        Optional<Mapping> columns = mapping.isPresent() ? MappingReader.read(mapping.get(), table, faults)
                : Optional.of(Mapping.own(table));
        if (!Files.isDirectory(folder)) {
            faults.add(Place.of(folder.toString()), "there is no such folder; a catalogue is one");
        }
        faults.throwIfAny();
        Optional<Grid> grid = GridReader.read(list, sheet.or(columns.orElseThrow()::sheet), columns.get().separator(), faults);
        Optional<Delivery> delivery = grid.flatMap(cells -> Delivery.of(cells, columns.get(), mapping.isEmpty(), table, faults));
        Optional<byte[]> standing = bytes(folder.resolve(table.file()), faults);
        List<MergedRow> ours = standing.isPresent() ? ours(folder, table, faults) : List.of();
        faults.throwIfAny();
        return sound(folder, table, ours, delivery.orElseThrow(), standing);
    }

    private static List<MergedRow> ours(Path folder, CatalogTable table, Faults faults) {
        CsvTable read = table.read(folder, faults);
        return TableMerge.rows(table, read);
    }

    /** Takes rows out until no fault of the whole catalogue stands in a row of the list. */
    private static CatalogImport sound(Path folder, CatalogTable table, List<MergedRow> ours, Delivery delivery,
            Optional<byte[]> standing) {
        List<Incoming> taken = new ArrayList<>(delivery.rows());
        List<Fault> refused = new ArrayList<>(delivery.refused());
        while (true) {
            TableMerge merge = TableMerge.of(table, ours, taken);
            Faults faults = new Faults();
            List<MergedRow> rows = merge.rows().stream().map(row -> row.with(faults)).toList();
            CatalogReader.readWith(folder, Map.of(table, new TableRows(rows, true)), faults);
            Set<Place> blamed = new HashSet<>();
            faults.all().forEach(fault -> blamed.add(new Place(fault.file(), fault.line())));
            List<Incoming> wrong = taken.stream().filter(row -> blamed.contains(row.place())).toList();
            if (wrong.isEmpty()) {
                if (faults.size() > 0) {
                    refused.addAll(faults.all());
                    throw new FaultsException(refused);
                }
                refused.sort((one, other) -> Integer.compare(one.line(), other.line()));
                List<String> columns = table.order().stream().filter(column -> table.columns().needed().contains(column)
                        || rows.stream().anyMatch(row -> row.has(column))).toList();
                return new CatalogImport(folder, table, merge.changes(), merge.unchanged(), refused, standing,
                        TableText.of(columns, rows.stream().map(MergedRow::cells).toList(), cell -> cell));
            }
            Set<Place> out = new HashSet<>(wrong.stream().map(Incoming::place).toList());
            faults.all().stream().filter(fault -> out.contains(new Place(fault.file(), fault.line()))).forEach(refused::add);
            taken.removeAll(wrong);
        }
    }

    /**
     * Writes the table: the old file is kept beside it, and the new one takes its place as a whole.
     *
     * @return where the old file is kept; empty where there was none
     * @throws FaultsException when the file is no longer as it was read
     * @throws IOException     when something cannot be written; the table is then as it was
     */
    public Optional<Path> apply() throws IOException {
        Path file = Files.exists(folder.resolve(table.file())) ? folder.resolve(table.file()).toRealPath() : folder.resolve(table.file());
        Faults faults = new Faults();
        Optional<byte[]> now = bytes(file, faults);
        faults.throwIfAny();
        if (now.isPresent() != standing.isPresent() || now.isPresent() && !Arrays.equals(now.get(), standing.get())) {
            throw new FaultsException(List.of(new Fault(file.toString(), 0,
                    "was changed while it was read; nothing was written: run it again")));
        }
        Optional<Path> kept = standing.isPresent() ? Optional.of(free(file)) : Optional.empty();
        if (kept.isPresent()) {
            WholeFile.replace(kept.get(), standing.get());
        }
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

    /** The first name that is free: offers.csv.bak, offers.csv.bak2 ... */
    private static Path free(Path file) throws IOException {
        for (int number = 1; number <= MOST_BACKUPS; number++) {
            Path name = file.resolveSibling(file.getFileName() + ".bak" + (number == 1 ? "" : String.valueOf(number)));
            if (Files.notExists(name)) {
                return name;
            }
        }
        throw new IOException("%d old copies stand beside %s; move them away".formatted(MOST_BACKUPS, file));
    }

    private static Optional<byte[]> bytes(Path file, Faults faults) {
        return Files.exists(file) ? Source.of(file).bytes(MOST_MEGABYTES, faults) : Optional.empty();
    }
}
