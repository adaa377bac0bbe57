package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

    @ParameterizedTest
    @CsvSource({"cores, coers, 1", "cores, cores, 0", "cores, core, 1", "cores, corse, 1", "'', abc, 3",
            "threads, thread_s, 1", "tdp_w, tpd_w, 1"})
    void distanceCountsInsertionsDeletionsSubstitutionsAndSwaps(String one, String other, int distance) {
        assertThat(Nearest.distance(one, other)).isEqualTo(distance);
        assertThat(Nearest.distance(other, one)).isEqualTo(distance);
    }

    @ParameterizedTest
    @CsvSource({"coers, cores", "core_count, cores", "price, unit_price", "SKU, sku", "min_qty, min_quantity", "leaddays, lead_days"})
    void hintNamesTheNearest(String name, String nearest) {
        Nearest columns = new Nearest(List.of("sku", "cores", "unit_price", "unit_cost", "min_quantity", "lead_days", "socket"));
        assertThat(columns.hint(name)).isEqualTo(", did you mean " + nearest + "?");
    }

    /** A set that every process orders otherwise. */
    @Test
    void everyRunNamesTheSame() {
        assertThat(new Nearest(Set.of("Heath 2", "Heath 1", "Heath 4")).hint("Heath 3")).isEqualTo(", did you mean Heath 1?");
        assertThat(new Nearest(Set.of("b", "c", "a", "d")).hint("nowhere")).isEqualTo("; known are a, b, c, d");
        assertThat(new Nearest(List.of("Heath 2", "Heath 1")).hint("Heath 3")).isEqualTo(", did you mean Heath 2?");
    }

    /** What was not meant is not suggested: a wrong guess that is taken is worse than none. */
    @ParameterizedTest
    @CsvSource({
        "gebraucht, 'new, refurbished, used'", "neuwertig, 'new, refurbished, used'", "unused, 'new, refurbished, used'",
        "renewed, 'new, refurbished, used'", "as new, 'new, refurbished, used'", "shiny, 'new, refurbished, used'",
        "SSD-960, 'PSU-750, CPU-2, M16'", "NOPE, 'M08, M16, WREN-2'", "M8, 'M4, M1'", "weight, 'sku, lot, lead_days'",
        "Qty, 'Artikle, Lot, Net'", "semicolon, 'point, comma'", "abc, sixteen letters."})
    void whatIsNotNearIsNotSuggested(String name, String known) {
        List<String> names = List.of(known.split(", "));
        assertThat(new Nearest(names).near(name)).isEmpty();
        assertThat(new Nearest(names).hint(name)).isEqualTo("; known are " + known);
    }

    /** One slip of the hand in any name of four letters or more is found again; a name of letters that it does not have is not. */
    @Test
    void everySlipIsNearAndNoOtherWord() {
        long seed = 5;
        Random random = new Random(seed);
        for (int run = 0; run < 5_000; run++) {
            String name = letters(random, "abcdefghij0123456789-_", 4 + random.nextInt(12));
            List<String> known = List.of(letters(random, "klmnopqrst", 1 + random.nextInt(20)), name, letters(random, "klmnopqrst", 1 + random.nextInt(20)));
            String slip = slip(random, name);
            assertThat(new Nearest(known).near(slip)).as("seed %d, run %d: %s for %s", seed, run, slip, name).isEqualTo(", did you mean " + name + "?");
            String other = letters(random, "uvwxyz", 1 + random.nextInt(20));
            assertThat(new Nearest(known).near(other)).as("seed %d, run %d: %s among %s", seed, run, other, known).isEmpty();
        }
    }

    private static String letters(Random random, String of, int length) {
        return random.ints(length, 0, of.length()).mapToObj(i -> of.substring(i, i + 1)).collect(Collectors.joining());
    }

    private static String slip(Random random, String name) {
        int at = random.nextInt(name.length() - 1);
        return name.substring(0, at) + switch (random.nextInt(4)) {
            case 0 -> name.substring(at + 1);
            case 1 -> "x" + name.substring(at);
            case 2 -> "x" + name.substring(at + 1);
            default -> "" + name.charAt(at + 1) + name.charAt(at) + name.substring(at + 2);
        };
    }

    @Test
    void nothingKnownGivesNoHint() {
        assertThat(new Nearest(List.of()).hint("cores")).isEmpty();
    }

    @Test
    void aFewOfManyNamesAreListed() {
        List<String> many = IntStream.range(0, 100).mapToObj(i -> "M" + i).toList();
        assertThat(Nearest.listed(many)).isEqualTo("M0, M1, M2 and 97 more");
        assertThat(Nearest.listed(many.subList(0, 40))).endsWith("M38, M39");
        assertThat(Nearest.listed(List.of("long ".repeat(100)))).hasSize(43);
    }

    @Test
    void hintsOfManyNamesAmongManyEndButAreKept() {
        Nearest skus = new Nearest(IntStream.range(0, 1000).mapToObj(i -> "MODULE-" + i).toList());
        for (int i = 0; i < 1000; i++) {
            skus.hint("MODULE-X" + i);
        }
        assertThat(skus.hint("MODULE-X1")).isEqualTo(", did you mean MODULE-1?");
        assertThat(skus.hint("MODULE-X999")).isEmpty();
    }
}
