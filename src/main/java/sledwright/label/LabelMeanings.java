package sledwright.label;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.label.LabelSpeed.Form;

/** Says what each field of a label means; docs/labels.md names the source of each. */
final class LabelMeanings {

    private static final Map<Integer, String> COUNTS = Map.of(1, "one", 2, "two", 4, "four", 8, "eight");

    private final ModuleLabel label;
    private final List<Meaning> meanings = new ArrayList<>();

    private LabelMeanings(ModuleLabel label) {
        this.label = label;
    }

    static List<Meaning> of(ModuleLabel label) {
        LabelMeanings made = new LabelMeanings(label);
        label.capacityGb().ifPresent(gb -> made.add("capacity", gb + "GB", gb + " GB, check bits aside", false));
        label.organisation().ifPresent(made::organisation);
        made.generation();
        made.speed();
        label.letter().ifPresent(letter -> made.add("type", letter.name(), letter.meaning()
                + (label.stacked() ? "; its devices are stacked, so its type is 3DS" : ""), letter.fromMemory()));
        label.speed().latency().ifPresent(made::latency);
        label.card().ifPresent(card -> made.add("raw card", card.toString(), "board design " + card.design()
                + card.revision().map(revision -> ", revision " + revision).orElse(""), false));
        label.spd().ifPresent(made::spd);
        label.suffixes().forEach(suffix -> made.add("suffix", suffix,
                label.speed().generation() == Generation.DDR5 && suffix.endsWith("T") ? "temperature range" : "the maker's own", true));
        return List.copyOf(made.meanings);
    }

    private void add(String field, String written, String meaning, boolean fromMemory) {
        meanings.add(new Meaning(field, written, meaning, fromMemory));
    }

    private void organisation(Organisation org) {
        String ranks = COUNTS.get(org.ranks()) + (org.ranks() == 1 ? " rank" : " ranks");
        String written = org.toString().substring(0, org.toString().indexOf('x'));
        if (org.stacked()) {
            String layers = COUNTS.get(org.layers());
            add("ranks", written, "%s of packages, each a stack of %s: %s logical ranks"
                    .formatted(ranks, layers, org.logicalRanks()), true);
        } else {
            boolean dual = org.stacking() == Organisation.Stacking.DUAL_DIE;
            add("ranks", written, ranks + (dual ? ", in packages of several dies" : ""), dual);
        }
        String density = label.capacityGb().map(gb -> "; %s Gbit each".formatted(plain(org.densityMbit(gb) / 1024))).orElse("");
        add("device width", "x" + org.width(), "devices of %s bits%s".formatted(org.width(), density), false);
    }

    private void generation() {
        Generation generation = label.speed().generation();
        String voltage = label.speed().voltage();
        add("generation", generation.prefix(), generation.toString(), false);
        boolean fromMemory = generation == Generation.DDR5 || voltage.equals("U");
        add("voltage", voltage.isEmpty() ? "none" : voltage, plain(label.speed().volts()) + " V", fromMemory);
    }

    private void speed() {
        LabelSpeed speed = label.speed();
        boolean bySpeed = speed.form() == Form.SPEED;
        add("speed", String.valueOf(bySpeed ? speed.mts() : speed.designation()), bySpeed
                ? "%s MT/s; %s MB/s in the other form".formatted(speed.mts(), speed.designation())
                : "%s MB/s: %s MT/s of 8 bytes".formatted(speed.designation(), speed.mts()), false);
        speed.bin().ifPresent(this::bin);
    }

    private void bin(SpeedBin bin) {
        int mts = label.speed().mts();
        Optional<Latency> latency = bin.latency(mts, label.stacked());
        String cycles = latency.map(known -> known + " cycles (CL-tRCD-tRP)")
                .orElse("the letter alone does not determine the cycles" + (label.stacked() ? " of a stacked module" : " at this rate"));
        boolean usual = bin.usualAt(mts);
        String others = usual ? "" : "; unusual at %s MT/s, which has %s".formatted(mts,
                SpeedBin.of(label.speed().generation(), Optional.of(mts)).stream().map(Enum::name).collect(Collectors.joining(", ")));
        add("bin", bin.name(), cycles + others, latency.isPresent() && bin.fromMemory(label.stacked()) || !usual);
    }

    private void latency(Latency latency) {
        boolean one = latency.cycles().size() == 1;
        add("CAS latency", latency.onLabel(), latency + " cycles" + (one ? "" : " (CL-tRCD-tRP)"), false);
    }

    private void spd(String digits) {
        add("SPD revision", digits, digits.length() == 2 ? "%c.%c".formatted(digits.charAt(0), digits.charAt(1))
                : "%c.%c, of the part by type of module %c.%c"
                .formatted(digits.charAt(0), digits.charAt(1), digits.charAt(2), digits.charAt(3)),
                digits.length() == 4);
    }

    static String plain(double figure) {
        return BigDecimal.valueOf(figure).stripTrailingZeros().toPlainString();
    }
}
