package sledwright.web.links;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jetty.util.Fields;
import sledwright.book.CustomerLink;
import sledwright.book.Leeway;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Nearest;
import sledwright.input.Place;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.YamlReader;
import sledwright.report.page.Wording;
import sledwright.web.http.RefusedException;

/** What of a request a customer may be allowed to change, and what one has changed. */
final class Changeable {

    private static final String MACHINES = "machines";
    static final Set<String> FIGURES = Set.of(MACHINES, "require.cores", "require.memory_gb", "require.bandwidth_gbs",
            "require.throughput", "require.work", "require.base_ghz", "require.all_core_ghz", "require.gb_per_core", "require.gbs_per_core",
            "require.spare_slots", "require.processors", "limit.price", "limit.lead_days", "limit.power_w");
    private static final Set<String> WHOLE = Set.of(MACHINES, "require.cores", "require.spare_slots", "require.processors",
            "limit.lead_days");
    static final Set<String> WORDS = Set.of("workload", "require.memory_mode", "limit.conditions");

    private static final int MOST = 12;
    private static final String CONDITIONS = "limit.conditions";
    private static final Pattern SET = Pattern.compile("--set ([a-z_.]+)=.*");

    private Changeable() {
    }

    /** @throws RefusedException with everything that is wrong in what shall be changeable */
    static List<Leeway> read(List<String> written) {
        List<Fault> faults = new ArrayList<>();
        Map<String, Leeway> may = new LinkedHashMap<>();
        for (String text : written) {
            Optional<Leeway> one = Leeway.read(text);
            if (one.isEmpty()) {
                faults.add(fault(text, "must be such as require.cores=8..32, the least first, or workload=one,another"));
            } else {
                wrong(one.get(), text, may).ifPresent(faults::add);
                may.put(one.get().key(), one.get());
            }
        }
        if (may.size() > MOST) {
            faults.add(fault("", "stands more than %s times".formatted(MOST)));
        }
        if (!faults.isEmpty()) {
            throw RefusedException.of(faults);
        }
        return List.copyOf(may.values());
    }

    private static Optional<Fault> wrong(Leeway one, String text, Map<String, Leeway> before) {
        Set<String> right = one.isFigure() ? FIGURES : WORDS;
        if (!right.contains(one.key())) {
            List<String> known = right.stream().sorted().toList();
            return Optional.of(fault(text, "%s is nothing that a customer may change from one value to another; it must be one of %s%s"
                    .formatted(one.key(), String.join(", ", known), new Nearest(known).hint(one.key()))));
        }
        return before.containsKey(one.key()) ? Optional.of(fault(text, one.key() + " stands twice")) : Optional.empty();
    }

    private static Fault fault(String value, String problem) {
        return new Fault(Place.of("may"), problem, Field.shown(value));
    }

    /** The request with one end of all that may be changed, to see that it can be read so. */
    static List<String> atOneEnd(List<Leeway> may, boolean least) {
        return may.stream().map(one -> set(one.key(), !one.isFigure() ? one.words().get(least ? 0 : one.words().size() - 1)
                : (least ? one.from() : one.to()).orElseThrow().toPlainString())).toList();
    }

    private static String set(String key, String value) {
        return key + "=" + (key.equals(CONDITIONS) ? "[" + value + "]" : value);
    }

    /**
     * What a customer wants otherwise, in keys that the desk sets. A field that was left empty stays as the request has it, and so does
     * one that says the same, which may be beyond what may be chosen.
     *
     * @param words of the customer
     * @throws RefusedException where that is not allowed
     */
    static List<String> sets(CustomerLink link, Fields wanted, Wording words) {
        List<Fault> faults = new ArrayList<>();
        List<String> sets = new ArrayList<>();
        for (Fields.Field field : wanted) {
            Optional<Leeway> may = link.may().stream().filter(one -> one.key().equals(field.getName())).findFirst();
            String value = field.getValue().strip();
            boolean same = value.isEmpty() || value.equals(value(link.request(), field.getName()));
            if (may.isEmpty()) {
                faults.add(new Fault(Place.of("the address"), words.say("link.fault.fixed"), Field.shown(field.getName())));
            } else if (!same && !may.get().holds(value)) {
                faults.add(new Fault(Place.of(field.getName()), may.get().isFigure() ? words.say("link.fault.number",
                        words.figure(may.get().from().orElseThrow()), words.figure(may.get().to().orElseThrow()))
                        : words.say("link.fault.word", String.join(", ", may.get().words())), Field.shown(value)));
            } else if (!same && WHOLE.contains(field.getName()) && !value.matches("\\d+")) {
                faults.add(new Fault(Place.of(field.getName()), words.say("link.fault.whole"), Field.shown(value)));
            } else if (!same) {
                sets.add(set(field.getName(), value));
            }
        }
        if (!faults.isEmpty()) {
            throw RefusedException.of(faults);
        }
        return sets;
    }

    /** What was set is a customer's field: its faults name the key, and neither the option nor the value, which stands in the field. */
    static <A> A inItsWords(Supplier<A> answered) {
        return inWordsOf("", answered);
    }

    /** Faults of what was set name the key behind {@code whose}. */
    static <A> A inWordsOf(String whose, Supplier<A> answered) {
        try {
            return answered.get();
        } catch (RefusedException refused) {
            throw RefusedException.of(refused.faults().stream().map(fault -> {
                Matcher set = SET.matcher(fault.file());
                return !set.matches() ? fault
                        : new Fault(Place.of(whose + set.group(1)), fault.message().replaceFirst("^\\S+ \"[^\"]*\": ", ""), fault.value());
            }).toList());
        }
    }

    /** What a request has under a key, of machines one where it says nothing; empty where it has nothing, or more than one value. */
    static String value(String request, String key) {
        Optional<Value> at = YamlReader.read(Source.unwritten("request", request), new Faults()).map(group -> group);
        for (String step : key.split("\\.")) {
            at = at.filter(Value.Group.class::isInstance).map(group -> ((Value.Group) group).values().get(step));
        }
        if (at.isPresent() && at.get() instanceof Value.Series series) {
            at = series.items().size() == 1 ? Optional.of(series.items().get(0)) : Optional.empty();
        }
        return at.filter(Value.Scalar.class::isInstance).map(scalar -> ((Value.Scalar) scalar).text())
                .orElse(key.equals(MACHINES) ? "1" : "");
    }
}
