package sledwright.catalog.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.catalog.BelowCost;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.PlacedCatalog;
import sledwright.catalog.TableRows;
import sledwright.catalog.intake.Mapping.Whole;
import sledwright.domain.SupplierNames;
import sledwright.input.CsvTable;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Grid;
import sledwright.input.GridReader;
import sledwright.input.Place;
import sledwright.input.Source;

/**
 * A supplier's list laid over one table of a catalogue, held to be sound as a whole, not yet written.
 *
 * @param standing  the table as it was read
 * @param changes   what is new or different, in the order of the list
 * @param unchanged how many rows of the list say what stands there already
 * @param refused   rows of the list that cannot be taken, and why
 * @param warnings  what is odd about rows that are taken
 * @param text      the table's file as it would be
 * @param made      the catalogue as it would be
 */
public record CatalogImport(StandingTable standing, List<Change> changes, int unchanged, List<Fault> refused,
        List<Fault> warnings, String text, PlacedCatalog made) {

    /** What is wrong only without the rows before it; a list that goes on like this is not worth its time. */
    private static final int MOST_ROUNDS = 20;

    public CatalogImport {
        changes = List.copyOf(changes);
        refused = List.copyOf(refused);
        warnings = List.copyOf(warnings);
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
        Optional<Delivery> told = grid.flatMap(cells -> Delivery.of(cells, columns.get(), mapping.isEmpty(), table, faults));
        StandingTable standing = StandingTable.of(folder, table, faults);
        List<MergedRow> ours = standing.bytes().isPresent() ? ours(folder, table, faults) : List.of();
        faults.throwIfAny();
        Optional<Whole> whole = columns.get().replaces();
        // What a list that replaces does not have is not to be, price breaks included.
        boolean ofLots = table == CatalogTable.OFFERS && whole.isEmpty();
        Delivery delivery = ofLots ? told.orElseThrow().ofLots(ours) : told.orElseThrow();
        Optional<Place> nameless = whole.isPresent() ? delivery.nameless() : Optional.empty();
        CatalogImport made = sound(standing, ours, delivery, whole.filter(kind -> nameless.isEmpty())
                .map(kind -> new Replacement(kind, suppliers(folder), Place.of(list.name()), delivery.read())));
        List<Fault> notes = new ArrayList<>(delivery.unread());
        nameless.ifPresent(row -> notes.add(new Fault(row,
                "does not say its sku and lot, so nothing that the list leaves out is taken as sold out")));
        return made.warning(notes);
    }

    /** What the shop calls its suppliers; as they are written where the catalogue as it stands has faults. */
    private static SupplierNames suppliers(Path folder) {
        return CatalogReader.readWith(folder, Map.of(), new Faults()).map(made -> made.catalog().suppliers())
                .orElse(SupplierNames.AS_WRITTEN);
    }

    private CatalogImport warning(List<Fault> notes) {
        List<Fault> more = new ArrayList<>(notes);
        more.addAll(warnings);
        return new CatalogImport(standing, changes, unchanged, refused, more, text, made);
    }

    private static List<MergedRow> ours(Path folder, CatalogTable table, Faults faults) {
        CsvTable read = table.read(folder, faults);
        return TableMerge.rows(table, read);
    }

    /** Takes rows out until the whole catalogue has no fault in a row of the list. */
    private static CatalogImport sound(StandingTable standing, List<MergedRow> ours, Delivery delivery,
            Optional<Replacement> replacement) {
        CatalogTable table = standing.table();
        List<Incoming> taken = delivery.rows();
        List<Fault> refused = new ArrayList<>(delivery.refused());
        for (int round = 0; ; round++) {
            List<Incoming> now = taken;
            TableMerge laid = TableMerge.of(table, ours, taken);
            TableMerge merge = replacement.map(whole -> whole.in(laid, now)).orElse(laid);
            Faults faults = new Faults();
            List<MergedRow> rows = merge.rows().stream().map(row -> row.with(faults)).toList();
            Optional<PlacedCatalog> made = CatalogReader.readWith(standing.folder(), Map.of(table, new TableRows(rows, true)), faults);
            if (made.isPresent()) {
                refused.sort((one, other) -> Integer.compare(one.line(), other.line()));
                List<String> columns = table.order().stream().filter(column -> table.columns().needed().contains(column)
                        || rows.stream().anyMatch(row -> row.has(column))).toList();
                return new CatalogImport(standing, merge.changes(), merge.unchanged(), refused, belowCost(made.get(), merge.changes()),
                        TableText.of(columns, rows.stream().map(MergedRow::cells).toList(), cell -> cell), made.get());
            }
            Map<Place, List<Fault>> blamed = faults.all().stream()
                    .collect(Collectors.groupingBy(fault -> new Place(fault.file(), fault.line())));
            List<Incoming> wrong = taken.stream().filter(row -> blamed.containsKey(row.place())).toList();
            wrong.stream().map(Incoming::place).distinct()
                    .forEach(place -> blamed.get(place).stream().distinct().forEach(refused::add));
            if (wrong.isEmpty() || round == MOST_ROUNDS) {
                refused.addAll(wrong.isEmpty() ? faults.all() : List.of());
                throw new FaultsException(refused);
            }
            taken = taken.stream().filter(row -> !blamed.containsKey(row.place())).toList();
        }
    }

    private static List<Fault> belowCost(PlacedCatalog made, List<Change> changes) {
        Set<Place> changed = changes.stream().map(Change::place).collect(Collectors.toSet());
        return made.offers().stream().filter(row -> changed.contains(row.place()))
                .flatMap(row -> BelowCost.of(row.value(), made.catalog()).map(message -> new Fault(row.place(), message)).stream())
                .toList();
    }

    /**
     * Writes the table: the old file is kept beside it, and the new one takes its place as a whole.
     *
     * @return where the old file is kept; empty where there was none
     * @throws FaultsException when another import is writing, or the catalogue is no longer as it was read
     * @throws IOException     when something cannot be written; the table is then as it was
     */
    public Optional<Path> apply() throws IOException {
        return standing.replace(text);
    }

    public Path folder() {
        return standing.folder();
    }

    public CatalogTable table() {
        return standing.table();
    }
}
