package sledwright.input;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.input.Asking.Shape;
import sledwright.input.Value.Group;
import sledwright.input.Value.Nothing;
import sledwright.input.Value.Scalar;
import sledwright.input.Value.Series;

/** The keys of one YAML section. Every key that is asked for counts as known; {@link #finish} reports the others. */
public final class Section implements Fields {

    /** A key that is a value itself, and what stands under it. */
    public record Entry(Field key, Field value) {
    }

    /** A section that may stand under a name of its own. */
    public record Named(Optional<Field> name, Section section) {
    }

    private final Group group;
    private final String path;
    private final Faults faults;
    private final Set<String> known = new HashSet<>();
    /** What may stand here; of other known keys it was only asked whether they are there, to refuse them. */
    private final Set<String> offered = new LinkedHashSet<>();

    private Section(Group group, String path, Faults faults) {
        this.group = group;
        this.path = path;
        this.faults = faults;
    }

    /** The keys at the top of a file. */
    public static Section top(Group group, Faults faults) {
        return new Section(group, "", faults);
    }

    @Override
    public Place place() {
        return group.place();
    }

    @Override
    public Faults faults() {
        return faults;
    }

    /** Where a key stands, or its section when it is absent. */
    public Place place(String key) {
        return group.keys().getOrDefault(key, place());
    }

    @Override
    public boolean has(String name) {
        return value(name).isPresent();
    }

    @Override
    public void missing(String name) {
        Place where = group.keys().getOrDefault(name, place());
        faults.add(where, full(name) + (group.keys().containsKey(name) ? " has no value" : " is missing"));
    }

    @Override
    public Optional<Field> field(String name) {
        asked(name, Shape.VALUE);
        return value(name).flatMap(value -> scalar(full(name), value));
    }

    /** The section under a key; empty when there is none or, with a fault, when something else stands there. */
    public Optional<Section> section(String name) {
        asked(name, Shape.SECTION);
        return value(name).flatMap(value -> section(full(name), value));
    }

    /** The section under a key that must have one; empty, with a fault, when there is none. */
    public Optional<Section> requiredSection(String name) {
        if (!has(name)) {
            missing(name);
        }
        return section(name);
    }

    /** The section under a key where one stands there; empty for a single value or nothing. */
    public Optional<Section> sectionIfAny(String name) {
        asked(name, Shape.SECTION);
        return value(name).filter(Group.class::isInstance).flatMap(value -> section(full(name), value));
    }

    /**
     * The name of a row, which no other row of its list may have.
     *
     * @param what it is the name of
     * @param seen names of earlier rows, and where they stand
     */
    public String uniqueName(String what, Map<String, Place> seen) {
        String name = sku("name");
        Place earlier = name.isEmpty() ? null : seen.putIfAbsent(name, place());
        if (earlier != null) {
            faults().add(place("name"), "%s \"%s\" stands twice, first at line %s".formatted(what, Field.shown(name), earlier.line()));
        }
        return name;
    }

    /** The keys that stand here, known or not, in the order of the file. */
    public Set<String> names() {
        faults.asking().shape(path, Shape.FREE_KEYS);
        return group.keys().keySet();
    }

    /** The sections listed under a key; none when the key is absent. */
    public List<Section> sections(String name) {
        asked(name, Shape.LIST_OF_SECTIONS);
        List<Section> found = new ArrayList<>();
        items(name, listed(name)).forEach(item -> section(full(name), item).ifPresent(found::add));
        return found;
    }

    /** The sections under a key where a list stands there; empty for anything else or nothing. */
    public Optional<List<Section>> sectionsIfAny(String name) {
        asked(name, Shape.LIST_OF_SECTIONS);
        return value(name).filter(Series.class::isInstance).map(list -> sections(name));
    }

    /**
     * The sections under a key, whether they stand in a list or under names of their own; none when the key is absent or, with a fault,
     * when they are too many. A name that is missing there is empty here.
     *
     * @param most how many may stand there; that there are none is for the caller to judge
     */
    public List<Named> listedOrNamed(String name, Bounds most) {
        asked(name, Shape.LIST_OF_SECTIONS);
        asked(name, Shape.NAMED_SECTIONS);
        faults.asking().count(full(name), most);
        Optional<Value> value = value(name);
        List<Named> found = new ArrayList<>();
        if (value.isPresent() && value.get() instanceof Series series) {
            series.items().forEach(item -> section(full(name), item).ifPresent(section -> found.add(new Named(Optional.empty(), section))));
        } else if (value.isPresent() && value.get() instanceof Group) {
            section(full(name), value.get()).ifPresent(named -> named.group.values().forEach((key, item) -> {
                Field keyField = new Field(named.path, key, named.place(key), false);
                if (item instanceof Nothing) {
                    named.missing(key);
                } else {
                    faults.asking().named(named.full(key));
                    section(named.full(key), item).ifPresent(section -> found.add(new Named(Optional.of(keyField), section)));
                }
            }));
        } else {
            value.ifPresent(other -> wrongShape(full(name), other, "a list of sections, or sections by name, such as \"main: { ... }\""));
        }
        if (!found.isEmpty() && !most.holds(BigDecimal.valueOf(found.size()))) {
            faults.add(place(name), "there are %s %s; their number must be %s".formatted(found.size(), full(name), most));
            return List.of();
        }
        return found;
    }

    /** The single values listed under a key; none when the key is absent. */
    public List<Field> list(String name) {
        asked(name, Shape.LIST_OF_VALUES);
        List<Field> found = new ArrayList<>();
        items(name, inBrackets(name)).forEach(item -> scalar(full(name), item).ifPresent(found::add));
        return found;
    }

    /** The single values under a key that holds either one or a list of them. */
    public List<Field> oneOrList(String name) {
        asked(name, Shape.VALUE);
        asked(name, Shape.LIST_OF_VALUES);
        Optional<Value> value = value(name);
        return value.isPresent() && value.get() instanceof Series ? list(name) : field(name).stream().toList();
    }

    /** The single values of a section whose keys are free; none when the section is absent. */
    public List<Entry> entries(String name) {
        asked(name, Shape.FREE_KEYS);
        List<Entry> found = new ArrayList<>();
        section(name).ifPresent(section -> section.group.values().forEach((key, value) -> {
            if (value instanceof Nothing) {
                section.missing(key);
            }
            Field keyField = new Field(section.path, key, section.place(key), false);
            scalar(section.full(key), value).ifPresent(field -> found.add(new Entry(keyField, field)));
        }));
        return found;
    }

    /** Reports every key that nobody asked for, with the nearest one that somebody did. */
    public void finish() {
        Nearest nearest = new Nearest(offered);
        group.keys().forEach((key, place) -> {
            if (!known.contains(key)) {
                String where = path.isEmpty() ? "" : " under " + path;
                faults.add(place, "unknown key \"%s\"%s%s".formatted(Field.shown(key), where, nearest.hint(key)));
            }
        });
    }

    private void asked(String name, Shape shape) {
        offered.add(name);
        faults.asking().shape(full(name), shape);
    }

    private Optional<Value> value(String name) {
        known.add(name);
        return Optional.ofNullable(group.values().get(name)).filter(value -> !(value instanceof Nothing));
    }

    /** @param rather how a list would be written */
    private List<Value> items(String name, String rather) {
        Optional<Value> value = value(name);
        if (value.isEmpty() || value.get() instanceof Series) {
            return value.map(series -> ((Series) series).items()).orElse(List.of());
        }
        wrongShape(full(name), value.get(), "a list; " + rather);
        return List.of();
    }

    /** What stands under a key as a list of values. */
    private String inBrackets(String name) {
        Value value = group.values().get(name);
        if (value instanceof Scalar scalar) {
            return "write [%s]".formatted(Field.shown(scalar.text()));
        }
        boolean bare = value instanceof Group keys && !keys.keys().isEmpty()
                && keys.values().values().stream().allMatch(Nothing.class::isInstance);
        return bare ? "write [%s]".formatted(Nearest.listed(((Group) value).keys().keySet())) : "write it in brackets: [..., ...]";
    }

    /** What stands under a key as a list of sections. */
    private String listed(String name) {
        return group.values().get(name) instanceof Group keys && !keys.keys().isEmpty()
                ? "write \"- %s: ...\"".formatted(Field.shown(keys.keys().keySet().iterator().next()))
                : "write a section of keys behind each hyphen, such as \"- name: ...\"";
    }

    private Optional<Section> section(String name, Value value) {
        if (value instanceof Group found) {
            return Optional.of(new Section(found, name, faults));
        }
        wrongShape(name, value, "a section of keys");
        return Optional.empty();
    }

    private Optional<Field> scalar(String name, Value value) {
        if (value instanceof Scalar scalar) {
            return Optional.of(new Field(name, scalar.text(), scalar.place(), false));
        }
        if (!(value instanceof Nothing)) {
            wrongShape(name, value, "a single value");
        }
        return Optional.empty();
    }

    private void wrongShape(String name, Value value, String right) {
        faults.add(value.place(), "%s is %s and must be %s".formatted(name, value.shape(), right));
    }

    private String full(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }
}
