package sledwright.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.request.Job;

class GeneratorsTest {

    private static final long SEED = 20261116;

    @TempDir
    Path dir;

    @Test
    void sameSeedGivesSameBytes() throws IOException {
        assertThat(written("first", 2, SEED)).isEqualTo(written("second", 2, SEED));
    }

    @Test
    void anotherSeedGivesAnotherCatalogue() throws IOException {
        Map<String, String> first = written("first", 1, SEED);
        Map<String, String> second = written("second", 1, SEED + 1);

        assertThat(first.get("offers.csv")).isNotEqualTo(second.get("offers.csv"));
        assertThat(first.get("processors.csv")).isNotEqualTo(second.get("processors.csv"));
    }

    @Test
    void theLocaleLeavesNoTrace() throws IOException {
        Map<String, String> here = written("here", 1, SEED);
        String request = requests("here").request(SEED, "best-value");
        Locale usual = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(written("there", 1, SEED)).isEqualTo(here);
            assertThat(requests("here").request(SEED, "best-value")).isEqualTo(request);
        } finally {
            Locale.setDefault(usual);
        }
    }

    @Test
    void aSmallerCatalogueLeavesNoPlatformOfALargerOne() throws IOException {
        written("same", 3, SEED);

        assertThat(written("same", 1, SEED)).isEqualTo(written("fresh", 1, SEED));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 10})
    void countsGrowWithTheScale(int scale) throws IOException {
        Map<String, String> files = written("catalogue", scale, SEED);

        assertThat(files.keySet()).filteredOn(name -> name.startsWith("platforms/")).hasSize(8 * scale);
        assertThat(skus(files, "processors.csv")).hasSize(90 * scale).doesNotHaveDuplicates();
        assertThat(skus(files, "memory.csv")).hasSize(80 * scale).doesNotHaveDuplicates();
        assertThat(skus(files, "drives.csv")).hasSize(40 * scale).doesNotHaveDuplicates();
        assertThat(skus(files, "cards.csv")).hasSize(20 * scale).doesNotHaveDuplicates();
        assertThat(files.get("offers.csv").lines().skip(1).filter(line -> !line.contains(",E0"))).hasSize(600 * scale);
        assertThat(files.get("offers.csv").lines().skip(1).filter(line -> line.contains(",E0")).map(line -> line.split(",")[1]).distinct()).hasSize(150 * scale);
    }

    @Test
    void everyOfferIsOfAPartAndNearlyEveryPartIsOffered() throws IOException {
        Map<String, String> files = written("catalogue", 1, SEED);
        Set<String> parts = Stream.concat(
                        Stream.of("processors.csv", "memory.csv", "drives.csv", "cards.csv", "extras.csv").flatMap(file -> skus(files, file).stream()),
                        files.entrySet().stream().filter(file -> file.getKey().startsWith("platforms/"))
                                .flatMap(file -> Pattern.compile("sku: ([A-Z0-9-]+)").matcher(file.getValue()).results())
                                .map(match -> match.group(1)))
                .collect(Collectors.toSet());
        Set<String> offered = Set.copyOf(skus(files, "offers.csv"));

        assertThat(parts).containsAll(offered);
        assertThat(offered.size()).isGreaterThan(parts.size() * 9 / 10);
    }

    /** Half of the requests ask for volumes, a third for cards; most of these can be met. */
    @Test
    void theCatalogueIsSoundAndSellsWholeMachines() throws IOException {
        written("catalogue", 1, SEED);
        Catalog catalog = CatalogReader.read(dir.resolve("catalogue"));
        Search search = new Search(catalog);
        int built = 0;
        int asked = 0;
        for (long seed = 0; seed < 40; seed++) {
            Path file = Files.writeString(dir.resolve("request.yaml"), requests("catalogue").equipped(seed));
            Request request = ((Job.Single) RequestFiles.job(file, catalog, "alternatives=1", "limit=")).request();
            if (!request.equipment().volumes().isEmpty() || !request.equipment().cards().isEmpty()) {
                asked++;
                built += search.run(request, Deadline.never()).ranked().isEmpty() ? 0 : 1;
            }
        }
        assertThat(asked).isGreaterThan(20);
        assertThat(built).isGreaterThan(asked / 3);
    }

    @Test
    void coveredSlotsAreSlotsOfTheBoard() throws IOException {
        Pattern covers = Pattern.compile("covers: \\[(\"[^\\]]+)\\]");
        int seen = 0;
        for (String text : written("catalogue", 10, SEED).values()) {
            for (MatchResult kit : covers.matcher(text).results().toList()) {
                List<String> own = names(text);
                for (String quoted : kit.group(1).split(", ")) {
                    String slot = quoted.replace("\"", "");
                    assertThat(own.isEmpty() ? slot.matches("[12][A-L][123]") : own.contains(slot)).as(slot + " in\n" + text).isTrue();
                    seen++;
                }
            }
        }
        assertThat(seen).isPositive();
    }

    @Test
    void requestsRepeatAndCoverEveryObjectiveAndMode() throws IOException {
        written("catalogue", 1, SEED);
        List<String> first = IntStream.range(0, 200).mapToObj(seed -> requests("catalogue").request(seed)).toList();
        List<String> second = IntStream.range(0, 200).mapToObj(seed -> requests("catalogue").request(seed)).toList();

        assertThat(first).isEqualTo(second).doesNotHaveDuplicates();
        assertThat(String.join("\n", first)).contains("objective: cheapest", "objective: most-throughput", "objective: most-bandwidth",
                "objective: most-memory", "objective: best-value", "memory_mode: mirrored", "memory_mode: rank-sparing", "mains_v: 115",
                "licence:", "spare_slots:", "conditions:").containsPattern("machines: [12]\\d");
    }

    private static List<String> names(String platform) {
        return Pattern.compile("slot_names: \\[([^\\]]+)\\]").matcher(platform).results()
                .flatMap(match -> Arrays.stream(match.group(1).split(", "))).toList();
    }

    private RequestGenerator requests(String name) {
        return new RequestGenerator("../" + name, dir.resolve(name));
    }

    private Map<String, String> written(String name, int scale, long seed) throws IOException {
        Path folder = dir.resolve(name);
        CatalogGenerator.write(scale, seed, folder);
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
            }
        }
        return files;
    }

    private static List<String> skus(Map<String, String> files, String file) {
        return files.get(file).lines().skip(1).map(line -> line.substring(0, line.indexOf(','))).toList();
    }
}
