package sledwright.input;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value of a YAML file and the line where it begins. */
public sealed interface Value {

    Place place();

    /** What a person calls a value of this shape. */
    String shape();

    /** A single value as written. */
    record Scalar(Place place, String text) implements Value {

        @Override
        public String shape() {
            return "a single value";
        }
    }

    /** No value: nothing, {@code ~} or {@code null} stands there. */
    record Nothing(Place place) implements Value {

        @Override
        public String shape() {
            return "nothing";
        }
    }

    /** Values in a row. */
    record Series(Place place, List<Value> items) implements Value {

        public Series {
            items = List.copyOf(items);
        }

        @Override
        public String shape() {
            return "a list";
        }
    }

    /** Values by key, in the order of the file; {@code keys} tells where each key stands. */
    record Group(Place place, Map<String, Value> values, Map<String, Place> keys) implements Value {

        /** The same group with one key set, or taken away by a {@link Nothing}. */
        public Group with(String key, Place keyPlace, Value value) {
            Map<String, Value> changed = new LinkedHashMap<>(values);
            Map<String, Place> places = new LinkedHashMap<>(keys);
            changed.put(key, value);
            places.put(key, keyPlace);
            return new Group(place, changed, places);
        }

        @Override
        public String shape() {
            return "a section of keys";
        }
    }
}
