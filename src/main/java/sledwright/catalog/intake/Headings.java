package sledwright.catalog.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Mapping.HeaderRows;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Grid;
import sledwright.input.Nearest;
import sledwright.input.Place;

/**
 * Which columns of a sheet bear which headings. Where the header has several rows, a heading is its texts from top to bottom with a
 * blank between them; a text may reach over the empty cells to its right, as merged cells do, where those have a heading below.
 *
 * @param columns  heading -> column, from 0
 * @param names    what each column may be called
 * @param place    where the header ends
 * @param firstRow the place in the grid of the first row behind the header
 */
record Headings(Map<String, Integer> columns, List<Set<String>> names, Place place, int firstRow) {

    /** How far down a header is looked for. */
    private static final int SEARCHED_ROWS = 50;
    private static final Pattern BLANKS = Pattern.compile("[\\s\\u00A0]+");

    /** Empty, with faults, when a heading is not there or stands twice. */
    static Optional<Headings> find(Grid grid, Mapping mapping, List<String> optional, Faults faults) {
        List<String> wanted = mapping.headings().stream().map(Headings::plain).distinct().toList();
        Optional<HeaderRows> given = mapping.header();
        if (given.isPresent()) {
            List<Grid.Row> rows = grid.rows().stream()
                    .filter(row -> row.number() >= given.get().first() && row.number() <= given.get().last()).toList();
            int behind = (int) grid.rows().stream().filter(row -> row.number() <= given.get().last()).count();
            return of(grid, rows, behind, given.get().last(), wanted, optional, faults);
        }
        int best = 0;
        long most = -1;
        for (int place = 0; place < Math.min(SEARCHED_ROWS, grid.rows().size()); place++) {
            List<Set<String>> names = names(List.of(grid.rows().get(place)));
            long found = wanted.stream().filter(heading -> names.stream().anyMatch(known -> known.contains(heading))).count();
            if (found > most) {
                most = found;
                best = place;
            }
        }
        List<Grid.Row> header = grid.rows().isEmpty() ? List.of() : List.of(grid.rows().get(best));
        return of(grid, header, best + 1, header.isEmpty() ? 1 : header.get(0).number(), wanted, optional, faults);
    }

    private static Optional<Headings> of(Grid grid, List<Grid.Row> header, int behind, int line, List<String> wanted, List<String> optional,
            Faults faults) {
        int before = faults.size();
        List<Set<String>> names = names(header);
        Place place = new Place(grid.file(), line);
        List<String> seen = names.stream().flatMap(Set::stream).filter(name -> !name.isEmpty()).distinct().toList();
        Nearest nearest = new Nearest(seen);
        Map<String, Integer> columns = new HashMap<>();
        for (String heading : wanted) {
            List<Integer> found = Stream.iterate(0, column -> column < names.size(), column -> column + 1)
                    .filter(column -> names.get(column).contains(heading)).toList();
            if (found.size() > 1) {
                faults.add(place, "heading \"%s\" stands over columns %s; rename all but one".formatted(Field.shown(heading),
                        found.stream().map(column -> Grid.address(column, line)).collect(Collectors.joining(", "))));
            } else if (found.size() == 1) {
                columns.put(heading, found.get(0));
            } else if (!optional.contains(heading)) {
                faults.add(place, "no column has the heading \"%s\"%s"
                        .formatted(Field.shown(heading), instead(nearest.near(heading), seen)));
            }
        }
        return faults.since(before) ? Optional.empty() : Optional.of(new Headings(columns, names, place, behind));
    }

    private static String instead(String near, List<String> seen) {
        if (seen.isEmpty()) {
            return "; there are no headings";
        }
        return (near.isEmpty() ? "; the headings are " : near + " The headings are ") + Nearest.listed(seen);
    }

    Optional<Integer> column(String heading) {
        return Optional.ofNullable(columns.get(plain(heading)));
    }

    /** How many columns the header has. */
    int width() {
        return names.size();
    }

    /** Says of each heading that none of our columns has what is below it; it may be one of ours in other letters. */
    List<Fault> unread(CatalogTable table) {
        Nearest ours = new Nearest(table.order());
        return IntStream.range(0, names.size()).filter(column -> !columns.containsValue(column))
                .mapToObj(column -> names.get(column).iterator().next()).filter(name -> !name.isEmpty())
                .map(name -> new Fault(place, "heading \"%s\" is none of ours, so its column is not read%s"
                        .formatted(Field.shown(name), ours.near(name)))).toList();
    }

    /** What every column may be called: its own texts, and the same with those that reach over it from the left. */
    private static List<Set<String>> names(List<Grid.Row> header) {
        int width = header.stream().mapToInt(row -> row.cells().size()).max().orElse(0);
        List<Set<String>> names = new ArrayList<>();
        for (int column = 0; column < width; column++) {
            List<String> own = new ArrayList<>();
            List<String> all = new ArrayList<>();
            for (int depth = 0; depth < header.size(); depth++) {
                String text = plain(header.get(depth).cell(column).text());
                own.add(text);
                boolean hasBelow = below(header, depth, column);
                for (int left = column - 1; text.isEmpty() && hasBelow && left >= 0; left--) {
                    text = plain(header.get(depth).cell(left).text());
                }
                all.add(text);
            }
            names.add(new LinkedHashSet<>(List.of(joined(own), joined(all))));
        }
        return names;
    }

    private static String joined(List<String> texts) {
        return texts.stream().filter(text -> !text.isEmpty()).collect(Collectors.joining(" "));
    }

    private static boolean below(List<Grid.Row> header, int depth, int column) {
        return header.subList(depth + 1, header.size()).stream().anyMatch(row -> !row.cell(column).text().isBlank());
    }

    private static String plain(String heading) {
        return BLANKS.matcher(heading).replaceAll(" ").strip();
    }
}
