package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogSource;
import sledwright.input.FaultsException;
import sledwright.input.Source;

/** However a sound file is broken, it is read or refused with faults; nothing else comes out. */
class BrokenFilesTest {

    private static final Path SHOP = Path.of("src/test/resources/shop");
    private static final int ROUNDS = 600;
    private static final List<String> SCRAPS = List.of("", "\n", ",", ";", "\"", ":", "{", "}", "[", "]", "&a ", "*a", "- ", "\t", "\0", "~",
            "-1", "1e999", "NaN", "99999999999", "0", "é", "\uFEFF", "# ", "!!", "<<", "|", ">", "'", "%", "@", "?", "null", "true", "---\n", "\r", "💾");

    private static final String REQUEST = """
            kind: quote
            name: render node
            platforms: [WREN-2, REED-S]
            machines: 3
            require: { cores: 20, memory_gb: 192.5, memory_mode: rank-sparing, processors: 2 }
            limit: { price: 2400.5, lead_days: 3, conditions: [new, used] }
            worth: { core: 12, gb: 0.955 }
            on_hand: { WREN-2: 1, M16: 8 }
            """;
    private static final String BUILD = """
            kind: build
            platform: WREN-2
            processor: [H1-08, H1-08]
            processors: 2
            cooling: WREN-HS-1
            supply: RS-750
            supply_count: 2
            modules: { 2A1: M16, 1A1: M16 }
            """;

    private static final String ORDER = """
            kind: order
            suppliers_max: 3
            delivery_charge: 12.50
            ship_by: 2025-04-07
            on_hand: { REED-F4: 1, M16: 8 }
            lines:
              - { name: web, machines: 6, platforms: [REED-S], limit: { lead_days: 14 }, priority: 5, uniform: true }
              - { machines: 2, require: { cores: 20 }, objective: best-value, worth: { core: 12 } }
            """;

    @TempDir
    Path work;

    @Test
    void brokenFilesAreReadOrRefused() throws IOException {
        copyShop();
        Path quote = Files.writeString(work.resolve("quote.yaml"), REQUEST);
        Path build = Files.writeString(work.resolve("build.yaml"), BUILD);
        Path order = Files.writeString(work.resolve("order.yaml"), ORDER);
        List<Path> files;
        try (Stream<Path> found = Files.walk(work)) {
            files = found.filter(Files::isRegularFile).sorted().toList();
        }
        int refused = 0;
        for (int seed = 0; seed < ROUNDS; seed++) {
            Random random = new Random(seed);
            Path file = files.get(random.nextInt(files.size()));
            byte[] sound = Files.readAllBytes(file);
            Files.write(file, broken(sound, random));
            refused += refused(file.equals(build) || file.equals(order) ? file : quote, seed, file) ? 1 : 0;
            Files.write(file, sound);
        }
        assertThat(refused).as("files that were refused").isBetween(ROUNDS / 4, ROUNDS - 1);
    }

    private boolean refused(Path request, int seed, Path file) {
        try {
            RequestReader.read(Source.of(request), List.of(), Optional.of(CatalogSource.of(work.resolve("shop"))), List.of(Kind.values()));
            return false;
        } catch (FaultsException faults) {
            assertThat(faults.faults()).as("seed " + seed).isNotEmpty().allMatch(fault -> !fault.message().isBlank());
            return true;
        } catch (RuntimeException | StackOverflowError defect) {
            return fail("seed %d, %s".formatted(seed, file), defect);
        }
    }

    private static byte[] broken(byte[] sound, Random random) {
        byte[] bytes = sound;
        for (int cuts = 1 + random.nextInt(3); cuts > 0; cuts--) {
            int from = random.nextInt(bytes.length + 1);
            int to = Math.min(bytes.length, from + random.nextInt(12));
            byte[] scrap = random.nextInt(8) == 0 ? new byte[] {(byte) random.nextInt(256)}
                    : SCRAPS.get(random.nextInt(SCRAPS.size())).getBytes(StandardCharsets.UTF_8);
            byte[] next = new byte[from + scrap.length + bytes.length - to];
            System.arraycopy(bytes, 0, next, 0, from);
            System.arraycopy(scrap, 0, next, from, scrap.length);
            System.arraycopy(bytes, to, next, from + scrap.length, bytes.length - to);
            bytes = next;
        }
        return bytes;
    }

    private void copyShop() throws IOException {
        try (Stream<Path> found = Files.walk(SHOP)) {
            for (Path file : found.filter(Files::isRegularFile).toList()) {
                Path target = work.resolve("shop").resolve(SHOP.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
    }
}
