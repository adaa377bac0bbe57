package sledwright.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.desk.view.LabelView;
import sledwright.domain.ModuleType;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Place;
import sledwright.label.LabelSpeed.Form;

class LabelReaderTest {

    private static final Place HERE = new Place("labels.txt", 1);

    private static ModuleLabel read(String text) {
        Faults faults = new Faults();
        Optional<LabelReader.Read> read = LabelReader.read(text, HERE, faults);
        assertThat(faults.all()).as(text).isEmpty();
        assertThat(read.orElseThrow().passedOver()).as(text).isEmpty();
        return read.get().label();
    }

    private static Reading reading(String text) {
        return Reading.of("x", LabelReader.read(text, HERE, new Faults()).orElseThrow());
    }

    static List<String> faults(String text) {
        Faults faults = new Faults();
        assertThat(LabelReader.read(text, HERE, faults)).as(text).isEmpty();
        return faults.all().stream().map(Fault::message).toList();
    }

    /** Labels as people type or copy them, with what the standard would print. */
    @ParameterizedTest
    @CsvSource({
        "16GB 2Rx4 PC4-2400T-RA1-11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "'  16gb  2rx4   pc4-2400t-ra1-11 ', 16GB 2Rx4 PC4-2400T-RA1-11",
        "16 GB 2R x 4  PC4 - 2133P-RAO-10, 16GB 2Rx4 PC4-2133P-RA0-10",
        "PC4-2400T-RA1-11 16GB 2Rx4, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB-2Rx4-PC4-2400T-RA1-11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16G 2RX4 PC4 2400T RA1 11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB 2R×4 PC4–2400T–RA1–11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB DDR4 2Rx4 PC4-2400T-R ECC REG, 16GB 2Rx4 PC4-2400T-R",
        "16GB 2Rx4 DDR4-2400 RDIMM, 16GB 2Rx4 PC4-2400-R",
        "8G 1RX8 PC4-2666V-E, 8GB 1Rx8 PC4-2666V-E",
        "16384MB 2Rx4 PC4-21333R, 16GB 2Rx4 PC4-21300R",
        "16GB 2Rx4 PC4-2667V-RB1, 16GB 2Rx4 PC4-2666V-RB1",
        "16GB 2Rx4 PC4-19200R-17-11-A1, 16GB 2Rx4 PC4-19200R-17-11-A1",
        "64GB 4DRX4 PC4-2666V-LD2-12-MA0, 64GB 4DRx4 PC4-2666V-LD2-12-MA0",
        "32GB 2Rx4 PC4-2133P-RBB-10, 32GB 2Rx4 PC4-2133P-RBB-10",
        "4GB 1Rx4 PC3L-10600R-09-11-E2-P2, 4GB 1Rx4 PC3L-10600R-9-11-E2-P2",
        "4GB 2Rx8 PC3-10600R-999, 4GB 2Rx8 PC3-10600R-999",
        "8GB 2Rx8 PC3-1600E, 8GB 2Rx8 PC3-12800E",
        "32gb_2rx8_pc5-4800b_re0_1010-xt, 32GB 2Rx8 PC5-4800B-RE0-1010-XT",
        "48GB 1Rx4 PC5-4800B-PF0-1010-XT EC4 RDIMM, 48GB 1Rx4 PC5-4800B-PF0-1010-XT",
        "128GB 2S4Rx4 PC4-2666V, 128GB 2S4Rx4 PC4-2666V",
        "16GB 2Rx4 PC4-19200 PC4-2400T-RA1-11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB 2Rx4 PC4-2400T-RA1-11 PC4-19200R, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB 2Rx4 PC4-2400-R PC4-2400T, 16GB 2Rx4 PC4-2400-R",
        "16GB 1Rx4 PC4-2400T UDIMM, 16GB 1Rx4 PC4-2400T-U",
        "16GB 1Rx8 PC4-2400T UDIMM ECC, 16GB 1Rx8 PC4-2400T-E",
        "64GB 4DRx4 PC4-2400T LRDIMM, 64GB 4DRx4 PC4-2400T-L",
        "PC4-2400T, PC4-2400T"})
    void theBag(String typed, String printed) {
        assertThat(read(typed)).hasToString(printed);
    }

    @Test
    void whatTheRowTakesFromIt() {
        Reading stacked = reading("128GB 2S4Rx4 PC4-2666V-LA1");
        assertThat(LabelView.cells(stacked).stream().map(cell -> cell.map(Object::toString).orElse("")))
                .containsExactly("128GB-2S4Rx4-PC4-2666V-LA1", "128GB 2S4Rx4 PC4-2666V-LA1", "DDR4", "3DS", "128", "2", "8", "4", "2666", "1.2", "");
        Reading low = reading("8GB 2Rx4 PC3L-12800R-11-13-E2");
        assertThat(low.label().speed().volts()).isEqualTo(1.35);
        assertThat(low.label().type()).contains(ModuleType.RDIMM);
        assertThat(low.label().speed().mts()).isEqualTo(1600);
        assertThat(reading("16GB 2Rx4 PC3-12800R").label().speed().volts()).isEqualTo(1.5);
        assertThat(reading("16GB 2Rx8 PC5-4800B-E").label().speed().volts()).isEqualTo(1.1);
    }

    @Test
    void whatIsMissingIsSaid() {
        assertThat(reading("PC4-2400T").unknown()).extracting(Unknown::what)
                .containsExactly("sku", "type", "capacity_gb", "ranks", "power_w", "price and stock");
        assertThat(reading("32GB 2Rx4 PC4-2400T-LA0").unknown()).extracting(Unknown::what)
                .containsExactly("sku", "logical_ranks", "power_w", "price and stock");
    }

    /** Each names the field and what would be right. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            16GB 2Rz4 PC4-2400T-RA1-11 | ranks x width "2RZ4": | did you mean 2Rx4?
            16GB 3Rx4 PC4-2400T-RA1-11 | ranks x width "3RX4": ranks must be 1, 2, 4 or 8 | did you mean 1Rx4?
            16GB 2S3Rx4 PC4-2400T-RA1 | ranks x width "2S3RX4": | layers of a stack 2, 4 or 8
            16GB 2Rx4 PC4-2401T-RA1-11 | speed "2401": | the nearest is PC4-2400
            16GB 2Rx4 PC4-19000R | speed "19000": | the nearest is PC4-19200
            16GB 2Rx4 PC4-4800B-RA1 | speed "4800": | PC5-4800 would be right
            16GB 2Rx4 PC4-2400X-RA1-11 | bin "X": must be a speed bin | PC4-2400 has P, R, T, U
            16GB 2Rx4 PC4-2400E | bin "E": | PC4-2400-E
            16GB 2Rx4 PC4-2400T-SA1-11 | type "S": must be R (registered), L | small-outline
            16GB 2Rx4 PC4-2400T-RA1X-11 | type and raw card "RA1X": | must be like RA1
            16GB 2Rx4 PC4-2400T-RA1-111 | SPD revision "111": | must be 2 digits
            64GB 2Rx4 PC5-4800B-RA0-10 | SPD revision "10": | must be 4 digits
            16GB 2Rx4 PC4-19200R-0 | CAS latency "0": | must be clock cycles
            15GB 2Rx4 PC4-2400T-RA1-11 | capacity "15GB": with 2Rx4 each device would hold 3.75 Gbit | nearest is 16GB
            16GB 2Rx4 PC4L-2400T-RA1-11 | voltage "PC4L": | must be PC4
            64GB 2Rx4 PC5B-4800-RA0-1010 | generation "PC5B": must be PC5; a speed bin stands | behind the rate: PC5-4800B
            64GB 2Rx4 PC5L-4800B-RA0-1010 | voltage "PC5L": | must be PC5
            8GB 2Rx4 PC3T-12800R | generation "PC3T": | must be PC3 or PC3L or PC3U
            16GB 2Rx4 PC4T-2400 | generation "PC4T": must be PC4; | PC4-2400T
            16GB 2Rx4 PC4-2400T-RA1-11-Yarrow | end of the label "YARROW": | the order is PC4-2400T-RA1-11
            2Rx4 PC4-2400T-RA1-11 Yarrow | end of the label "YARROW": | the order is PC4-2400T-RA1-11
            16GB PC4-2400T-RA1-11 Yarrow | end of the label "YARROW": | the order is PC4-2400T-RA1-11
            16GB 2Rx4 PC4-2400T Yarrow | type and raw card "YARROW": | must be like RA1
            16GB 2Rx4 PC4-19200-17 Yarrow | raw card "YARROW": | must be like A1
            PC2-5300P | generation "PC2": | must be PC3, PC4 or PC5
            16GBB 2Rx4 PC4-2400T-R | capacity "16GBB": | did you mean 16GB?
            512MB 1Rx8 PC3-10600U | capacity "512MB": | must be a whole number from 1 to 1024 GB
            16GB 2Rx4 | speed is missing: | PC4-2400T
            16GB 32GB 2Rx4 PC4-2400T | capacity "32GB": | the label already says 16GB
            16GB 2Rx4 PC4-2400T-RA1 LRDIMM | type "LRDIMM": | the letter R says RDIMM
            16GB 2Rx4 PC4-2400T-RA1 3DS | type "3DS": | such as 2S4Rx4
            16GB 2Rx4 PC4-2400T-RA1 DDR3 | generation "DDR3": | PC4, which is DDR4
            16GB 2Rx4 PC4-2400T-RA1-11-P1-P2-P3 | end of the label "P3": | the order is PC4-2400T-RA1-11
            Wonder 16GB 2Rx4 PC4-2400T-R | word "WONDER": | is no field of a label
            16GB 2Rx4 PC4-2400T-PA1 | type "P": must be R (registered), L (load-reduced), E (unbuffered, with ECC), U (unbuffered | without ECC)
            16GB 2Rx4 PC4-2400T-R PC4-2400T-L | type "L": | the label already says R
            16GB 2Rx4 PC3-12800R PC4-1600 | speed "PC4-1600": | already says PC3-12800R
            16GB 2Rx4 PC4-2400T PC4-2666V | speed "PC4-2666V": | already says PC4-2400T
            """)
    void wrongLabels(String text, String begins, String holds) {
        List<String> faults = faults(text.strip());
        assertThat(faults).hasSize(1);
        assertThat(faults.get(0)).startsWith(begins.strip()).contains(holds.strip());
    }

    /** What makers and sellers print behind a label is distinguished from what is wrong in it, whatever stands around it and in upper or lower case. */
    @ParameterizedTest
    @CsvSource({
        "16GB 2Rx4 PC4-2400T-RA1-11 Yarrow, YARROW",
        "16GB 2Rx4 PC4-2400T-R Yarrow, YARROW",
        "16GB 2Rx4 PC4-2400-R-11 Yarrow, YARROW",
        "16gb 2rx4 pc4 2400t ra1 11 yarrow memory, YARROW MEMORY",
        "16GB 2Rx4 PC4-2400T-RA1-11 Yarrow-Memory 1742, YARROW MEMORY 1742",
        "16GB 2Rx4 PC4-2400T-RA1-11 RDIMM Yarrow ECC Memory, YARROW MEMORY",
        "PC4-2400T-RA1-11 Yarrow 16GB 2Rx4, YARROW",
        "PC4-2400T-RA1-11 16GB 2Rx4 Yarrow Rex2, YARROW REX2",
        "16GB 2Rx4 PC4-19200R-17-11-A1 Yarrow, YARROW",
        "16GB 2Rx4 PC4-19200R Yarrow, YARROW",
        "8GB 2Rx4 PC3L-12800R-11-13-E2 Yarrow, YARROW",
        "8GB 2Rx4 PC3L-12800R-11 Yarrow, YARROW",
        "32GB 2Rx8 PC5-4800B-RE0-1010-XT Yarrow YM-4711, YARROW YM 4711",
        "16GB 2Rx4 PC4-2400T-RA1-11-P1-P2 P3, P3"})
    void textBehindAWholeLabelIsPassedOver(String text, String passedOver) {
        Faults faults = new Faults();
        Optional<LabelReader.Read> read = LabelReader.read(text, HERE, faults);
        assertThat(faults.all()).as(text).isEmpty();
        assertThat(String.join(" ", read.orElseThrow().passedOver())).isEqualTo(passedOver);
        assertThat(read.get().label().capacityGb()).isPresent();
        assertThat(read.get().label().letter()).contains(ModuleLetter.R);
    }

    @Test
    void everyFieldThatIsWrongIsNamed() {
        assertThat(faults("16GX 3Rx4 PC4-2401X-ZA1-1")).extracting(message -> message.substring(0, message.indexOf('"') - 1))
                .containsExactly("capacity", "ranks x width", "speed", "bin", "type", "SPD revision");
        assertThat(faults("PC4-19001Z-1-1-A12")).extracting(message -> message.substring(0, message.indexOf('"') - 1))
                .containsExactly("speed", "type", "CAS latency", "SPD revision", "raw card");
    }

    @Test
    void anUnusualBinIsReadAndSaid() {
        assertThat(LabelMeanings.of(read("16GB 2Rx4 PC4-2400V-R"))).filteredOn(meaning -> meaning.field().equals("bin"))
                .singleElement().satisfies(bin -> assertThat(bin.meaning()).contains("unusual at 2400 MT/s, which has P, R, T, U"));
    }

    /** Whatever is printed is read back: every form, generation, rate, bin and organisation, with chance in the rest. */
    @Test
    void printedLabelsAreReadBack() {
        long seed = 11;
        Random random = new Random(seed);
        int count = 0;
        for (Generation generation : Generation.values()) {
            for (Generation.Rate rate : generation.rates()) {
                for (Organisation organisation : Organisation.all()) {
                    for (ModuleLabel label : labels(generation, rate.mts(), organisation, random)) {
                        String sloppy = sloppy(label.toString(), random);
                        assertThat(read(label.toString())).as("seed %d: %s", seed, label).isEqualTo(label);
                        assertThat(read(sloppy)).as("seed %d: %s", seed, sloppy).isEqualTo(label);
                        count++;
                    }
                }
            }
        }
        assertThat(count).isGreaterThan(5_000);
    }

    private static List<ModuleLabel> labels(Generation generation, int mts, Organisation organisation, Random random) {
        List<ModuleLabel> labels = new ArrayList<>();
        List<String> voltages = List.copyOf(generation.volts().keySet());
        for (Form form : Form.values()) {
            if (generation == Generation.DDR3 && form == Form.SPEED) {
                continue;
            }
            List<Optional<SpeedBin>> bins = new ArrayList<>(List.of(Optional.empty()));
            if (form == Form.SPEED) {
                SpeedBin.of(generation).forEach(bin -> bins.add(Optional.of(bin)));
            }
            for (Optional<SpeedBin> bin : bins) {
                Optional<ModuleLetter> letter = maybe(random, pick(random, ModuleLetter.of(generation)));
                Optional<Latency> latency = form == Form.SPEED ? Optional.empty()
                        : maybe(random, random.nextBoolean() ? new Latency(List.of(11)) : Latency.of(9, 9 + random.nextInt(5), 9));
                Optional<RawCard> card = (form == Form.BANDWIDTH || letter.isPresent() ? maybe(random, pick(random, List.of("A", "E", "AB")))
                        : Optional.<String>empty()).map(design -> new RawCard(design, Optional.of(String.valueOf(random.nextInt(10)))));
                String digits = generation == Generation.DDR5 ? "1010" : "11";
                Optional<String> spd = form == Form.SPEED || latency.isPresent() ? maybe(random, digits) : Optional.empty();
                boolean suffix = form == Form.SPEED ? letter.isPresent() : letter.isPresent() && card.isPresent();
                List<Integer> sizes = generation.densitiesMbit().stream().map(organisation::capacityGb).filter(gb -> gb >= 1 && gb <= 1024)
                        .map(Double::intValue).toList();
                labels.add(new ModuleLabel(maybe(random, pick(random, sizes)), maybe(random, organisation),
                        new LabelSpeed(generation, pick(random, voltages), form, mts, bin, latency), letter, card, spd, suffix && random.nextBoolean() ? List.of("P2") : List.of()));
            }
        }
        return labels;
    }

    private static <T> T pick(Random random, List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    private static <T> Optional<T> maybe(Random random, T value) {
        return random.nextInt(3) == 0 ? Optional.empty() : Optional.of(value);
    }

    /** The same in another hand: case, blanks, and underlines for hyphens. */
    private static String sloppy(String label, Random random) {
        String mark = pick(random, List.of("-", " ", "_", " - ", "--"));
        String gap = pick(random, List.of(" ", "  ", "\t", "_"));
        String spread = Pattern.compile("[- ]").matcher(label).replaceAll(found -> found.group().equals("-") ? mark : gap);
        return random.nextBoolean() ? spread.toLowerCase(Locale.ROOT) : spread;
    }

    @Test
    void chanceNeverBreaksIt() {
        long seed = 12;
        Random random = new Random(seed);
        String letters = "0123456789GBRxXSDPC345LTUVAE-- _\u0000\u00e9\ud83d\u2013\n";
        for (int run = 0; run < Integer.getInteger("sledwright.seeds", 50_000); run++) {
            StringBuilder text = new StringBuilder(run % 2 == 0 ? "16GB 2Rx4 PC4-2400T-RA1-11" : "");
            for (int change = random.nextInt(12); change >= 0; change--) {
                text.insert(random.nextInt(text.length() + 1), letters.charAt(random.nextInt(letters.length())));
                if (random.nextBoolean()) {
                    text.deleteCharAt(random.nextInt(text.length()));
                }
            }
            Faults faults = new Faults();
            Optional<LabelReader.Read> label = LabelReader.read(text.toString(), HERE, faults);
            assertThat(label.isPresent()).as("seed %d, run %d: %s", seed, run, text).isEqualTo(faults.size() == 0);
            label.ifPresent(found -> assertThat(Reading.of("x", found).sku()).hasSizeLessThanOrEqualTo(64));
        }
        assertThat(faults("9".repeat(100_000))).hasSize(1);
    }

    @Test
    void wordsOfTheCommandLine() {
        assertThat(labels("16GB", "2Rx4", "PC4-2400T-RA1-11")).containsExactly("16GB 2Rx4 PC4-2400T-RA1-11");
        assertThat(labels("16GB", "2Rx4", "PC4-2400T-R", "32GB", "2Rx4", "PC4-2666V-R")).containsExactly("16GB 2Rx4 PC4-2400T-R", "32GB 2Rx4 PC4-2666V-R");
        assertThat(labels("PC4-2400T-R", "PC4-2666V-R")).containsExactly("PC4-2400T-R", "PC4-2666V-R");
        assertThat(labels("16GB 2Rx4 PC4-2400T-R", "PC4-2666V-R", "8GB 1Rx8 PC4-2400T-E")).containsExactly("16GB 2Rx4 PC4-2400T-R", "PC4-2666V-R", "8GB 1Rx8 PC4-2400T-E");
        assertThat(labels("16", "GB", "2Rx4", "PC4-2400T-R")).containsExactly("16 GB 2Rx4 PC4-2400T-R");
        assertThat(labels()).isEmpty();
    }

    private static List<String> labels(String... arguments) {
        return LabelLines.ofArguments(List.of(arguments)).stream().map(found -> found.value()).toList();
    }
}
