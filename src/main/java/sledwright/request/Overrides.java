package sledwright.request;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.input.Faults;
import sledwright.input.Nearest;
import sledwright.input.Place;
import sledwright.input.Value;
import sledwright.input.Value.Group;
import sledwright.input.Value.Nothing;
import sledwright.input.Value.Scalar;
import sledwright.input.Value.Series;
import sledwright.input.YamlReader;

/** Keys of a request that the command line sets, as {@code path=value}; whatever is wrong with one is reported as of that argument. */
final class Overrides {

    static final String OPTION = "--set ";

    private static final String LINES = "lines";
    private static final int LONGEST_SHOWN = 120;
    /** Sections whose keys are part numbers or slots. */
    private static final Set<String> FREE = Set.of("on_hand", "modules", "extras");

    private final Value value;
    private final Place place;
    private final Faults faults;
    private int depth;

    private Overrides(Value value, Place place, Faults faults) {
        this.value = value;
        this.place = place;
        this.faults = faults;
    }

    /** The request with every override in place. */
    static Group apply(Group request, List<String> overrides, Faults faults) {
        Group changed = request;
        for (String override : overrides) {
            Place place = Place.of(OPTION + (override.length() <= LONGEST_SHOWN ? override : override.substring(0, LONGEST_SHOWN) + "..."));
            int equals = override.indexOf('=');
            if (equals <= 0) {
                faults.add(place, "must be a key and its value, such as require.cores=24");
                continue;
            }
            Optional<Value> value = YamlReader.value(override.substring(equals + 1), place, faults);
            if (value.isPresent()) {
                changed = new Overrides(value.get(), place, faults).set(changed, override.substring(0, equals).strip(), false);
            }
        }
        return changed;
    }

    /**
     * A path is one key, or a section and a path within it. A section whose keys are free takes the rest as one key, for part numbers may
     * have points of their own.
     */
    private Group set(Group group, String path, boolean free) {
        if (free && value instanceof Nothing) {
            return group.without(path);
        }
        if (free || path.indexOf('.') < 0 || group.values().containsKey(path)) {
            return group.with(path, place, value);
        }
        depth++;
        if (depth > YamlReader.DEEPEST) {
            faults.add(place, "must not go through more than %s keys".formatted(YamlReader.DEEPEST));
            return group;
        }
        String name = group.values().keySet().stream().filter(key -> path.startsWith(key + "."))
                .max(Comparator.comparingInt(String::length)).orElse(path.substring(0, path.indexOf('.')));
        String rest = path.substring(name.length() + 1);
        Value section = group.values().getOrDefault(name, new Nothing(place));
        if (section instanceof Nothing) {
            boolean first = !FREE.contains(name) && rest.matches("0(\\..*)?");
            section = first ? new Series(place, List.of()) : new Group(place, Map.of(), Map.of());
        }
        return group.with(name, group.keys().getOrDefault(name, place), inside(section, name, rest));
    }

    /** What stands under a name, with the rest of the path set within. */
    private Value inside(Value section, String name, String rest) {
        if (section instanceof Series series) {
            return entry(series, name, rest);
        }
        if (section instanceof Group group && name.equals(LINES)) {
            return line(group, rest);
        }
        if (section instanceof Group group) {
            return set(group, rest, FREE.contains(name));
        }
        faults.add(place, "%s is %s and has no keys to set".formatted(name, section.shape()));
        return section;
    }

    /** Lines by name. A whole line may be new; what is set in a line is not, or a mistyped name would order more machines. */
    private Group line(Group lines, String path) {
        boolean known = lines.values().keySet().stream().anyMatch(name -> begins(path, name));
        if (!known && (path.indexOf('.') >= 0 || value instanceof Nothing)) {
            noSuch("line", path, "give its name", lines.values().keySet());
            return lines;
        }
        return value instanceof Nothing && lines.values().containsKey(path) ? lines.without(path) : set(lines, path, false);
    }

    private void noSuch(String what, String path, String right, Collection<String> names) {
        int point = path.indexOf('.');
        faults.add(place, "there is no such %s; %s%s"
                .formatted(what, right, new Nearest(names).hint(point < 0 ? path : path.substring(0, point))));
    }

    /** A list, an entry of which is named or numbered from 0; the number behind the last adds a whole one. */
    private Series entry(Series list, String listName, String path) {
        int index = index(list, path);
        if (path.equals(String.valueOf(list.items().size())) && !(value instanceof Nothing)) {
            return list.with(value);
        }
        if (index < 0) {
            noSuch(listName.equals(LINES) ? "line" : "entry of " + listName, path, right(list),
                    list.items().stream().flatMap(entry -> name(entry).stream()).toList());
            return list;
        }
        Value entry = list.items().get(index);
        String rest = path.substring(Math.min(path.length(), word(entry, index, path).length() + 1));
        if (rest.isEmpty()) {
            return list.with(index, value);
        }
        return list.with(index, inside(entry, listName + "." + word(entry, index, path), rest));
    }

    private static String right(Series list) {
        if (list.items().isEmpty()) {
            return "it is empty";
        }
        boolean named = list.items().stream().anyMatch(entry -> name(entry).isPresent());
        int last = list.items().size() - 1;
        return named ? "give its name or its number from 0" : last == 0 ? "the only one is number 0" : "give its number, from 0 to " + last;
    }

    private static int index(Series list, String path) {
        int best = -1;
        for (int index = 0; index < list.items().size(); index++) {
            Optional<String> name = name(list.items().get(index));
            if (name.isPresent() && begins(path, name.get())
                    && (best < 0 || name.get().length() > name(list.items().get(best)).orElseThrow().length())) {
                best = index;
            }
        }
        for (int index = 0; best < 0 && index < list.items().size(); index++) {
            best = begins(path, String.valueOf(index)) ? index : best;
        }
        return best;
    }

    /** What the path calls an entry: its name where it begins with that, else its number. */
    private static String word(Value entry, int index, String path) {
        return name(entry).filter(name -> begins(path, name)).orElse(String.valueOf(index));
    }

    private static Optional<String> name(Value entry) {
        return entry instanceof Group group && group.values().get("name") instanceof Scalar scalar ? Optional.of(scalar.text())
                : Optional.empty();
    }

    private static boolean begins(String path, String name) {
        return path.equals(name) || path.startsWith(name + ".");
    }
}
