package sledwright.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.input.Faults;
import sledwright.input.Place;
import sledwright.label.LabelSpeed.Form;

/** Turns an SPD whose checksums hold into the label and the row of its module. */
final class SpdDecoder {

    private final SpdLayout layout;
    private final SpdBytes spd;
    private final Place place;
    private final Faults faults;
    private final List<Meaning> meanings = new ArrayList<>();

    SpdDecoder(SpdLayout layout, SpdBytes spd, Place place, Faults faults) {
        this.layout = layout;
        this.spd = spd;
        this.place = place;
        this.faults = faults;
    }

    /** The module; empty, with a fault for each field that cannot be. */
    Optional<Reading> read() {
        int before = faults.size();
        mean("generation", SpdLayout.KEY, layout.generation.toString());
        Optional<ModuleLetter> letter = letter();
        Optional<Organisation> organisation = organisation();
        Optional<Integer> capacityGb = organisation.flatMap(this::capacityGb);
        Optional<Generation.Rate> rate = rate();
        if (faults.since(before)) {
            return Optional.empty();
        }
        Optional<Latency> cycles = latency(rate.orElseThrow());
        if (cycles.isEmpty()) {
            return Optional.empty();
        }
        Latency latency = cycles.get();
        ModuleLabel label = label(letter, organisation.orElseThrow(), capacityGb, rate.get().mts(), latency);
        mean("voltage", layout == SpdLayout.DDR3 ? 6 : 11, LabelMeanings.plain(label.speed().volts()) + " V");
        mean("CAS latency", layout.timings.taa().get(0), latency + " cycles (CL-tRCD-tRP)");
        label.card().ifPresent(card -> mean("raw card", layout.card.code(),
                "board design %s, revision %s".formatted(card.design(), card.revision().orElseThrow())));
        mean("SPD revision", 1, spd.bits(1, 4, 4) + "." + spd.bits(1, 0, 4));
        Optional<String> part = part();
        part.ifPresent(number -> mean("part number", layout.part.first(), number));
        return Optional.of(Reading.of(place.file(), label, part, meanings));
    }

    private void mean(String field, int address, String meaning) {
        meanings.add(new Meaning(field, "byte %s: 0x%02X".formatted(address, spd.at(address)), meaning, false));
    }

    private void fault(String field, int address, String problem) {
        faults.add(place, "%s 0x%02X in byte %s %s".formatted(field, spd.at(address), address, problem));
    }

    private Optional<ModuleLetter> letter() {
        ModuleLetter letter = layout.types.get(spd.bits(SpdLayout.MODULE_TYPE, 0, 4));
        boolean hybrid = layout == SpdLayout.DDR4 && spd.bits(SpdLayout.MODULE_TYPE, 7, 1) == 1;
        if (letter == null || hybrid) {
            fault("module type", SpdLayout.MODULE_TYPE, "is that of no RDIMM, LRDIMM or UDIMM, the modules that server slots take");
            return Optional.empty();
        }
        boolean checkBits = spd.bits(layout.busWidth(), 3, 2) > 0;
        ModuleLetter found = letter == ModuleLetter.U && checkBits ? ModuleLetter.E : letter;
        mean("type", SpdLayout.MODULE_TYPE, found.meaning());
        return Optional.of(found);
    }

    private Optional<Organisation> organisation() {
        int address = layout.organisation;
        int ranks = spd.bits(address, 3, 3) + 1;
        int width = 4 << spd.bits(address, 0, 3);
        int layers = layout.layers(spd);
        Organisation.Stacking stacking = layers > 1 ? Organisation.Stacking.THREE_DS : Organisation.Stacking.NONE;
        boolean uneven = layout == SpdLayout.DDR4 && spd.bits(address, 6, 1) == 1;
        if (uneven || !Organisation.possible(ranks, stacking, layers, width)) {
            fault("organisation", address, uneven ? "says that the ranks are not alike, which cannot be read"
                    : "says %s ranks of x%s in layers of %s, which no module has".formatted(ranks, width, layers));
            return Optional.empty();
        }
        if (spd.bits(layout.busWidth(), 0, 3) != 3) {
            fault("bus width", layout.busWidth(), "must say 64 data bits");
            return Optional.empty();
        }
        Organisation found = new Organisation(ranks, stacking, layers, width);
        mean("ranks x width", address, found.toString());
        return Optional.of(found);
    }

    private Optional<Integer> capacityGb(Organisation organisation) {
        Optional<Integer> density = layout.densityMbit(spd);
        double gb = density.map(organisation::capacityGb).orElse(0.0);
        if (density.isEmpty() || gb < 1 || gb != Math.rint(gb)) {
            fault("density", SpdLayout.DENSITY, density.isEmpty() ? "is no density of " + layout.generation + " devices"
                    : "makes a module of %s GB, which is no whole number of GB".formatted(LabelMeanings.plain(gb)));
            return Optional.empty();
        }
        mean("density", SpdLayout.DENSITY, "%s Gbit a die: %s GB".formatted(LabelMeanings.plain(density.get() / 1024.0), (int) gb));
        return Optional.of((int) gb);
    }

    private Optional<Generation.Rate> rate() {
        int address = layout.timings.cycle().get(0);
        double cyclePs = layout.timePs(layout.timings.cycle(), spd);
        Optional<Generation.Rate> rate = cyclePs > 0 ? layout.generation.ofClock(cyclePs) : Optional.empty();
        if (rate.isEmpty()) {
            fault("clock", address, layout.coarsePs(spd) == 0 ? "counts in steps that cannot be read"
                    : "makes a cycle of %s ps, which no rate of %s has"
                    .formatted(LabelMeanings.plain(Math.rint(cyclePs)), layout.generation));
        }
        rate.ifPresent(found -> mean("speed", address, found.mts() + " MT/s"));
        return rate;
    }

    private Optional<Latency> latency(Generation.Rate rate) {
        double cyclePs = 2e6 / rate.exactMts();
        List<Integer> cycles = layout.timings.latency().map(time -> cycles(time, cyclePs)).toList();
        if (!cycles.stream().allMatch(Latency::isCount)) {
            fault("CAS latency", layout.timings.taa().get(0), "makes %s cycles with tRCD and tRP, which no module has".formatted(cycles));
            return Optional.empty();
        }
        return Optional.of(new Latency(cycles));
    }

    private int cycles(List<Integer> time, double cyclePs) {
        return (int) Math.ceil(layout.timePs(time, spd) / cyclePs - layout.cycleSlack());
    }

    private ModuleLabel label(Optional<ModuleLetter> letter, Organisation organisation, Optional<Integer> capacityGb, int mts,
            Latency latency) {
        boolean speedForm = layout == SpdLayout.DDR4;
        boolean hasCard = spd.size() > Math.max(layout.card.code(), layout.card.extension());
        Optional<SpeedBin> bin = speedForm ? SpeedBin.of(latency, layout.generation, mts, organisation.stacked()) : Optional.empty();
        String spdRevision = "%s%s".formatted(spd.bits(1, 4, 4), spd.bits(1, 0, 4));
        Optional<Latency> cas = speedForm ? Optional.empty() : Optional.of(new Latency(latency.cycles().subList(0, 1)));
        LabelSpeed speed = new LabelSpeed(layout.generation, layout.voltage(spd), speedForm ? Form.SPEED : Form.BANDWIDTH, mts, bin, cas);
        return new ModuleLabel(capacityGb, Optional.of(organisation), speed, letter, hasCard ? layout.card(spd) : Optional.empty(),
                Optional.of(spdRevision).filter(digits -> digits.length() == 2), List.of());
    }

    private Optional<String> part() {
        return spd.size() < layout.part.first() + layout.part.count() ? Optional.empty()
                : Optional.of(spd.text(layout.part.first(), layout.part.count())).filter(text -> !text.isEmpty());
    }
}
