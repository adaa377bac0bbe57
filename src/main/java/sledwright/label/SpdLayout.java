package sledwright.label;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where an SPD keeps what a row needs: JESD21-C, annex K for DDR3 and annex L for DDR4, from memory; a test holds every address
 * to Debian's decode-dimms, all but the codes of 12 and 24 Gbit.
 */
enum SpdLayout {
    DDR3(Generation.DDR3, 0x0B, 7, new Timings(List.of(12, 34), List.of(16, 35), List.of(18, 36), List.of(20, 37)),
            new CardBytes(62, 60), new TextBytes(128, 18), Map.of(0x01, ModuleLetter.R, 0x02, ModuleLetter.U, 0x0B, ModuleLetter.L)),
    DDR4(Generation.DDR4, 0x0C, 12, new Timings(List.of(18, 125), List.of(24, 123), List.of(25, 122), List.of(26, 121)),
            new CardBytes(130, 128), new TextBytes(329, 20), Map.of(0x01, ModuleLetter.R, 0x02, ModuleLetter.U, 0x04, ModuleLetter.L));

    static final int KEY = 2;
    static final int MODULE_TYPE = 3;
    static final int DENSITY = 4;
    static final int CRC = 126;
    static final int SECOND_CRC = 254;

    private static final int LEAST_DENSITY_MBIT = 256;
    private static final String CARDS = "ABCDEFGHJKLMNPRTUVWY";

    /** Of each time its byte of coarse steps, and its signed byte of fine ones. */
    record Timings(List<Integer> cycle, List<Integer> taa, List<Integer> trcd, List<Integer> trp) {

        Stream<List<Integer>> latency() {
            return Stream.of(taa, trcd, trp);
        }
    }

    /** Where the raw card's design and revision stand, and what a revision above 3 is. */
    record CardBytes(int code, int extension) {
    }

    record TextBytes(int first, int count) {
    }

    final Generation generation;
    final int organisation;
    final Timings timings;
    final CardBytes card;
    /** The part number. */
    final TextBytes part;
    final Map<Integer, ModuleLetter> types;
    private final int key;

    SpdLayout(Generation generation, int key, int organisation, Timings timings, CardBytes card, TextBytes part,
              Map<Integer, ModuleLetter> types) {
        this.generation = generation;
        this.key = key;
        this.organisation = organisation;
        this.timings = timings;
        this.card = card;
        this.part = part;
        this.types = types;
    }

    static Optional<SpdLayout> keyed(int key) {
        return Arrays.stream(values()).filter(layout -> layout.key == key).findFirst();
    }

    /** It stands behind the organisation. */
    int busWidth() {
        return organisation + 1;
    }

    /** How many bytes the first checksum covers. */
    int covered(SpdBytes spd) {
        return this == DDR3 && spd.bits(0, 7, 1) == 1 ? 117 : 126;
    }

    /** What one die holds, in megabits; empty where the code is not one of those known. */
    Optional<Integer> densityMbit(SpdBytes spd) {
        int code = spd.bits(DENSITY, 0, 4);
        Optional<Integer> odd = this == DDR3 ? Optional.empty() : Optional.ofNullable(Map.of(8, 12_288, 9, 24_576).get(code));
        return odd.or(() -> Optional.of(LEAST_DENSITY_MBIT << code)).filter(generation.densitiesMbit()::contains);
    }

    /** The dies of a stack that loads the bus once; 1 where there is none. */
    int layers(SpdBytes spd) {
        boolean stacked = this == DDR4 && spd.bits(6, 7, 1) == 1 && spd.bits(6, 0, 2) == 2;
        return stacked ? spd.bits(6, 4, 3) + 1 : 1;
    }

    /** Picoseconds of one coarse step; 0 where the SPD states none that is known. */
    double coarsePs(SpdBytes spd) {
        if (this == DDR4) {
            return spd.at(17) == 0 ? 125 : 0;
        }
        return spd.at(11) == 0 ? 0 : 1000.0 * spd.at(10) / spd.at(11);
    }

    double finePs(SpdBytes spd) {
        if (this == DDR4) {
            return 1;
        }
        return spd.bits(9, 0, 4) == 0 ? 0 : (double) spd.bits(9, 4, 4) / spd.bits(9, 0, 4);
    }

    double timePs(List<Integer> time, SpdBytes spd) {
        return spd.at(time.get(0)) * coarsePs(spd) + spd.signed(time.get(1)) * finePs(spd);
    }

    /** Part of a cycle by which a rounded time may be too long, as decode-dimms has it; DDR3 rounds up whatever is over. */
    double cycleSlack() {
        return this == DDR4 ? 0.025 : 0.001;
    }

    /** The voltage as the letter of a label: the lowest at which the devices work. */
    String voltage(SpdBytes spd) {
        return this == DDR4 ? "" : spd.bits(6, 2, 1) == 1 ? "U" : spd.bits(6, 1, 1) == 1 ? "L" : "";
    }

    /** The raw card; empty for one of several letters or none. */
    Optional<RawCard> card(SpdBytes spd) {
        int design = spd.bits(card.code, 0, 5);
        int extended = spd.bits(card.extension, 5, 3);
        int revision = extended > 0 ? extended : spd.bits(card.code, 5, 2);
        return spd.bits(card.code, 7, 1) == 1 || design >= CARDS.length() ? Optional.empty()
                : Optional.of(new RawCard(CARDS.substring(design, design + 1), Optional.of(String.valueOf(revision))));
    }
}
