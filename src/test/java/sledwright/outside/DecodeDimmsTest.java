package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.domain.ModuleType;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.label.ModuleLabel;
import sledwright.label.Organisation;
import sledwright.label.RawCard;
import sledwright.label.Reading;
import sledwright.label.SpdImage;
import sledwright.label.SpdReader;

/**
 * SPDs read as {@code decode-dimms} reads them. S: that script, of Debian's i2c-tools, which holds JEDEC's SPD decoding for DDR3
 * (JESD21-C, annex K) and DDR4 (annex L). What it prints is compared, not what the images were made from.
 */
class DecodeDimmsTest {

    private static final Path SCRIPT = Path.of("/usr/bin/decode-dimms");
    private static final int COUNT = 150;

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void readsTheSame(int ddr, @TempDir Path folder) throws IOException, InterruptedException {
        if (System.getenv("CI") == null) {
            assumeThat(Files.isExecutable(SCRIPT)).as("decode-dimms of Debian's i2c-tools is not installed; this check is skipped").isTrue();
        }
        long seed = 40 + ddr;
        List<SpdImage> images = new ArrayList<>(SpdImage.some(ddr, COUNT, seed));
        images.add(ddr == 3 ? SpdImage.ddr3() : SpdImage.ddr4());
        List<Path> files = new ArrayList<>();
        for (SpdImage image : images) {
            files.add(Files.writeString(folder.resolve("%03d.hex".formatted(files.size())), SpdImage.hexdump(image.bytes())));
        }
        Map<String, Map<String, String>> decoded = decoded(files, folder);
        for (Path file : files) {
            Faults faults = new Faults();
            Reading reading = SpdReader.read(Source.of(file), faults).orElseThrow(() -> new AssertionError(faults.all().toString()));
            Map<String, String> theirs = decoded.get(file.toString());
            String what = "seed %d, %s: %s against %s".formatted(seed, file.getFileName(), reading, theirs);
            ModuleLabel label = reading.label();
            double supplyV = label.speed().volts();
            assertThat(theirs.get("Size")).as(what).isEqualTo(1024 * label.capacityGb().orElseThrow() + " MB");
            assertThat(theirs.get("Ranks")).as(what).isEqualTo(String.valueOf(label.organisation().map(Organisation::ranks).orElseThrow()));
            assertThat(theirs.get("SDRAM Device Width")).as(what).isEqualTo(label.organisation().map(Organisation::width).orElseThrow() + " bits");
            assertThat(theirs.get("Fundamental Memory type")).as(what).startsWith(label.speed().generation().name());
            assertThat(theirs.get("Module Type")).as(what).isEqualTo(label.letter().orElseThrow().type().label());
            assertThat(label.type().equals(Optional.of(ModuleType.THREE_DS))).as(what)
                    .isEqualTo(theirs.getOrDefault("Package Type", "").startsWith("3DS"));
            // It rounds down: 1066 2/3 to 1066, and so do labels.
            assertThat(theirs.get("Maximum module speed")).as(what).startsWith(label.speed().mts() + " MT/s");
            assertThat(theirs.get("Module Reference Card")).as(what).isEqualTo("%s revision %s"
                    .formatted(label.card().orElseThrow().design(), label.card().flatMap(RawCard::revision).orElseThrow()));
            String cycles = theirs.get(ddr == 4 ? "AA-RCD-RP-RAS (cycles)" : "tCL-tRCD-tRP-tRAS");
            String ours = reading.meanings().stream().filter(meaning -> meaning.field().equals("CAS latency")).findFirst().orElseThrow().meaning();
            assertThat(cycles).as(what).startsWith(ours.substring(0, ours.indexOf(' ')) + "-");
            assertThat(theirs.get("Part Number")).as(what).isEqualTo(reading.sku());
            String volts = theirs.get(ddr == 4 ? "Module Nominal Voltage" : "Operable voltages");
            assertThat(volts).as(what).contains(supplyV == 1.25 ? "1.2X V" : supplyV + (ddr == 4 ? " V" : "V"));
            assertThat(volts.contains("1.35V") && supplyV == 1.5 || volts.contains("1.2X") && supplyV > 1.25).as(what).isFalse();
            assertThat(theirs.toString()).as(what).contains("=OK (0x").doesNotContain("Bad");
        }
    }

    /** What the script prints about each file: file -> name -> value. */
    private static Map<String, Map<String, String>> decoded(List<Path> files, Path folder) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(SCRIPT.toString(), "-x"));
        files.forEach(file -> command.add(file.toString()));
        Path printed = folder.resolve("printed.txt");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(printed.toFile()).start();
        assertThat(process.waitFor()).as(Files.readString(printed)).isZero();
        Map<String, Map<String, String>> decoded = new LinkedHashMap<>();
        Map<String, String> values = new LinkedHashMap<>();
        for (String line : Files.readAllLines(printed)) {
            if (line.startsWith("Decoding EEPROM: ")) {
                values = new LinkedHashMap<>();
                decoded.put(line.substring("Decoding EEPROM: ".length()).strip(), values);
            }
            String[] columns = line.strip().split("\\s{2,}", 2);
            if (columns.length == 2) {
                values.putIfAbsent(columns[0], columns[1]);
            }
        }
        return decoded;
    }
}
