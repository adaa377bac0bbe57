package sledwright.request;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.input.Faults;
import sledwright.input.Place;
import sledwright.input.Value;
import sledwright.input.Value.Group;
import sledwright.input.Value.Nothing;
import sledwright.input.YamlReader;

/** Keys of a request that the command line sets, as {@code path=value}; whatever is wrong with one is reported as of that argument. */
final class Overrides {

    static final String OPTION = "--set ";

    private Overrides() {
    }

    /** The request with every override in place. */
    static Group apply(Group request, List<String> overrides, Faults faults) {
        Group changed = request;
        for (String override : overrides) {
            Place place = Place.of(OPTION + override);
            int equals = override.indexOf('=');
            if (equals <= 0) {
                faults.add(place, "must be a key and its value, such as require.cores=24");
                continue;
            }
            Optional<Value> value = YamlReader.value(override.substring(equals + 1), place, faults);
            if (value.isPresent()) {
                changed = set(changed, override.substring(0, equals).strip(), value.get(), place);
            }
        }
        return changed;
    }

    /** A path is one key, or a section and a key of it; that key may have points of its own, as part numbers do. */
    private static Group set(Group request, String path, Value value, Place place) {
        int point = path.indexOf('.');
        if (point < 0 || request.values().containsKey(path)) {
            return request.with(path, place, value);
        }
        String name = path.substring(0, point);
        Value section = request.values().getOrDefault(name, new Nothing(place));
        if (section instanceof Nothing) {
            section = new Group(place, Map.of(), Map.of());
        }
        // Anything else under the section's name is the file's fault, reported where it stands.
        return section instanceof Group group
                ? request.with(name, request.keys().getOrDefault(name, place), group.with(path.substring(point + 1), place, value))
                : request;
    }
}
