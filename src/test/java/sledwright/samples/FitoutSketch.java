package sledwright.samples;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;

/** Drives, cards and extras of a machine in the making; nothing as it starts. */
public final class FitoutSketch {

    private final List<Volume> volumes = new ArrayList<>();
    private Optional<String> driver = Optional.empty();
    private final SortedMap<String, Card> cards = new TreeMap<>();
    private final Map<Extra, Integer> extras = new LinkedHashMap<>();

    public FitoutSketch volume(String name, RaidLevel level, String group, Drive... drives) {
        volumes.add(new Volume(name, level, group, List.of(drives), List.of()));
        return this;
    }

    /** A volume of one part. */
    public FitoutSketch volume(String name, RaidLevel level, String group, int number, Drive each, int spares) {
        volumes.add(new Volume(name, level, group, Collections.nCopies(number, each), Collections.nCopies(spares, each)));
        return this;
    }

    public FitoutSketch driver(String what) {
        driver = Optional.of(what);
        return this;
    }

    public FitoutSketch card(String slot, Card card) {
        cards.put(slot, card);
        return this;
    }

    public FitoutSketch extra(Extra extra, int units) {
        extras.put(extra, units);
        return this;
    }

    public Fitout make() {
        return new Fitout(volumes, driver, cards, extras, Optional.empty());
    }
}
