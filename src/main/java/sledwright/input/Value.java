package sledwright.input;

import java.util.ArrayList;
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

        /** The same values with one of them replaced, or taken out by a {@link Nothing}. */
        public Series with(int index, Value value) {
            List<Value> changed = new ArrayList<>(items);
            if (value instanceof Nothing) {
                changed.remove(index);
            } else {
                changed.set(index, value);
            }
            return new Series(place, changed);
        }

        /** The same values and one more. */
        public Series with(Value value) {
            List<Value> changed = new ArrayList<>(items);
            changed.add(value);
            return new Series(place, changed);
        }

        @Override
        public String shape() {
            return "a list";
        }
    }

    /** Values by key, in the order of the file; {@code keys} has where each key stands. */
    record Group(Place place, Map<String, Value> values, Map<String, Place> keys) implements Value {

        /** The same group with one key set, or taken away by a {@link Nothing}. */
        public Group with(String key, Place keyPlace, Value value) {
            Map<String, Value> changed = new LinkedHashMap<>(values);
            Map<String, Place> places = new LinkedHashMap<>(keys);
            changed.put(key, value);
            places.put(key, keyPlace);
            return new Group(place, changed, places);
        }

        /** The same group without a key. */
        public Group without(String key) {
            Map<String, Value> changed = new LinkedHashMap<>(values);
            Map<String, Place> places = new LinkedHashMap<>(keys);
            changed.remove(key);
            places.remove(key);
            return new Group(place, changed, places);
        }

        @Override
        public String shape() {
            return "a section of keys";
        }
    }
}
