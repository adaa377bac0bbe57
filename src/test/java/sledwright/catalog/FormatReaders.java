package sledwright.catalog;

import java.nio.file.Path;
import sledwright.input.Faults;

/** The readers of a catalogue's YAML files, each by itself. */
public final class FormatReaders {

    private FormatReaders() {
    }

    public static void shop(Path file, Faults faults) {
        ShopReader.read(file, faults);
    }

    public static void platform(Path file, Faults faults) {
        PlatformReader.read(file, faults);
    }

    public static void enclosure(Path file, Faults faults) {
        EnclosureReader.read(file, faults);
    }
}
