package sledwright.catalog.intake;

import static java.util.Map.entry;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sledwright.catalog.CatalogBounds;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Mapping.HeaderRows;
import sledwright.catalog.intake.Mapping.Notation;
import sledwright.catalog.intake.Mapping.PriceBreak;
import sledwright.catalog.intake.Mapping.Whole;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.GridReader;
import sledwright.input.Nearest;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.Section.Entry;
import sledwright.input.YamlReader;

/** Reads the file that says which of a supplier's columns is which of ours. */
public final class MappingReader {

    static final Bounds FACTOR = Bounds.above(0, 1_000_000, "");
    static final Bounds DECIMALS = Bounds.of(0, 9, "decimals");
    static final Bounds HEADER = Bounds.of(1, GridReader.MOST_HEADER_ROWS, "");

    private static final Map<String, Character> SEPARATORS = ordered(entry("comma", ','), entry("semicolon", ';'), entry("tab", '\t'),
            entry("bar", '|'));
    private static final Map<String, Character> DECIMAL = ordered(entry("point", '.'), entry("comma", ','));
    private static final Map<String, Character> THOUSANDS = ordered(entry("comma", ','), entry("point", '.'), entry("blank", ' '),
            entry("apostrophe", '\''));
    /** A pattern by which these come back as they went distinguishes days. */
    private static final List<LocalDate> SAMPLE_DAYS = List.of(LocalDate.of(2025, 3, 31), LocalDate.of(2030, 12, 1));
    private static final Pattern ROWS = Pattern.compile("(\\d{1,4})-(\\d{1,4})");

    private final CatalogTable table;
    private final Faults faults;
    private final Map<String, ColumnRule> rules = new LinkedHashMap<>();
    private final Nearest nearest;

    private MappingReader(CatalogTable table, Faults faults) {
        this.table = table;
        this.faults = faults;
        nearest = new Nearest(table.order());
    }

    /** Empty, with faults, when something in the file is wrong. */
    static Optional<Mapping> read(Source source, CatalogTable table, Faults faults) {
        int before = faults.size();
        Optional<Mapping> mapping = YamlReader.read(source, faults)
                .map(group -> new MappingReader(table, faults).mapping(Section.top(group, faults)));
        return faults.since(before) ? Optional.empty() : mapping;
    }

    /** Reads a mapping for nothing but its faults. */
    public static void check(Source source, CatalogTable table, Faults faults) {
        read(source, table, faults);
    }

    private Mapping mapping(Section top) {
        top.field("as").flatMap(field -> field.word(CatalogTable::named, CatalogTable.labels(), faults)).filter(other -> other != table)
                .ifPresent(other -> top.field("as").orElseThrow().fault("must be %s, as --as has it".formatted(table.label()), faults));
        Optional<String> sheet = top.field("sheet").map(Field::text);
        Optional<Character> separator = word(top, "separator", SEPARATORS);
        Optional<HeaderRows> header = top.field("header").flatMap(this::header);
        Optional<Character> decimal = word(top, "decimal", DECIMAL);
        Optional<Character> thousands = word(top, "thousands", THOUSANDS);
        if (thousands.isPresent() && thousands.get().equals(decimal.orElse('.'))) {
            top.field("thousands").ifPresent(field -> field.fault("must not be the same as decimal", faults));
        }
        Optional<String> dates = top.field("dates").flatMap(this::pattern);
        top.requiredSection("columns").ifPresent(this::columns);
        for (Entry entry : top.entries("constants")) {
            if (isColumn(entry.key())) {
                addConstant(entry);
            }
        }
        List<PriceBreak> breaks = breaks(top);
        Optional<Whole> replaces = top.wordIfAny("replaces", Whole.WORDS);
        if (table != CatalogTable.OFFERS) {
            List.of("breaks", "replaces").stream().filter(top::has)
                    .forEach(key -> faults.add(top.place(key), "%s is for lists of offers".formatted(key)));
        }
        top.finish();
        Notation notation = new Notation(decimal, thousands, dates);
        return new Mapping(sheet, separator, header, notation, List.copyOf(rules.values()), breaks, replaces);
    }

    /** Prices that have a column for each price break. */
    private List<PriceBreak> breaks(Section top) {
        Map<Integer, PriceBreak> breaks = new TreeMap<>();
        for (Section section : top.sections("breaks")) {
            int from = section.whole("from", CatalogBounds.MIN_QUANTITY);
            if (breaks.putIfAbsent(from, new PriceBreak(from, rule("unit_price", section))) != null) {
                faults.add(section.place("from"), "the price from %s stands twice".formatted(from));
            }
        }
        if (!breaks.isEmpty()) {
            List.of("unit_price", "min_quantity").stream().filter(rules::containsKey).forEach(column -> faults.add(top.place("breaks"),
                    "breaks say each price and from how many units on it holds, so %s must not stand under columns or constants"
                    .formatted(column)));
        }
        return List.copyOf(breaks.values());
    }

    private void addConstant(Entry entry) {
        String column = entry.key().text();
        if (rules.putIfAbsent(column, ColumnRule.constant(column, entry.value().text())) != null) {
            entry.key().fault("stands under columns already; give it a value for empty cells there, with \"empty\"", faults);
        }
    }

    private void columns(Section section) {
        for (String column : List.copyOf(section.names())) {
            Optional<Section> detailed = section.sectionIfAny(column);
            Field name = new Field("columns", column, section.place(column), false);
            if (!isColumn(name)) {
                section.has(column);
            } else if (detailed.isPresent()) {
                rules.put(column, rule(column, detailed.get()));
            } else {
                String heading = section.text(column);
                rules.put(column, ColumnRule.of(column, heading.strip()));
            }
        }
        if (section.names().isEmpty()) {
            faults.add(section.place(), "columns must name at least one of our columns and their heading");
        }
    }

    private ColumnRule rule(String column, Section section) {
        boolean figure = !table.isText(column);
        String heading = section.text("heading").strip();
        BigDecimal factor = section.decimalIfAny("factor", FACTOR).orElse(BigDecimal.ONE);
        OptionalInt decimals = section.wholeIfAny("decimals", DECIMALS).map(OptionalInt::of).orElse(OptionalInt.empty());
        String strip = section.text("strip", "");
        String empty = section.text("empty", "");
        Map<String, String> words = new HashMap<>();
        section.entries("words").forEach(entry -> words.put(entry.key().text().strip().toLowerCase(Locale.ROOT), entry.value().text()));
        for (String ofFigures : List.of("factor", "decimals")) {
            if (!figure && section.has(ofFigures)) {
                faults.add(section.place(ofFigures), "%s is for figures, and %s holds words".formatted(ofFigures, column));
            }
        }
        section.finish();
        return new ColumnRule(column, Optional.of(heading), empty, factor, decimals, strip, words);
    }

    private boolean isColumn(Field name) {
        faults.asking().words(name.name(), table.order());
        if (table.order().contains(name.text())) {
            return true;
        }
        name.fault("is no column of %s%s".formatted(table.file(), nearest.hint(name.text())), faults);
        return false;
    }

    private Optional<HeaderRows> header(Field field) {
        faults.asking().pattern(field.name(), "^%s$".formatted(ROWS));
        Matcher rows = ROWS.matcher(field.text());
        if (!rows.matches()) {
            return field.whole(HEADER, faults).map(row -> new HeaderRows(row, row));
        }
        int first = Integer.parseInt(rows.group(1));
        int last = Integer.parseInt(rows.group(2));
        if (first < 1 || last < first || last - first > 4) {
            field.fault("must be a row, or some few rows, such as 3-4", faults);
            return Optional.empty();
        }
        return Optional.of(new HeaderRows(first, last));
    }

    private Optional<String> pattern(Field field) {
        try {
            DateTimeFormatter days = DateTimeFormatter.ofPattern(field.text(), Locale.ROOT);
            if (SAMPLE_DAYS.stream().allMatch(day -> LocalDate.parse(days.format(day), days).equals(day))) {
                return Optional.of(field.text());
            }
        } catch (IllegalArgumentException | DateTimeException notDays) {
            // Reported below.
        }
        field.fault("must be a pattern of days, months and years, such as dd.MM.uuuu", faults);
        return Optional.empty();
    }

    private Optional<Character> word(Section section, String key, Map<String, Character> words) {
        return section.field(key).flatMap(field -> field.word(text -> Optional.ofNullable(words.get(text)), words.keySet(), faults));
    }

    /** In the order in which messages list them. */
    @SafeVarargs
    private static Map<String, Character> ordered(Map.Entry<String, Character>... words) {
        Map<String, Character> ordered = new LinkedHashMap<>();
        List.of(words).forEach(word -> ordered.put(word.getKey(), word.getValue()));
        return ordered;
    }
}
