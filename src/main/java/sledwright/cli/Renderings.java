package sledwright.cli;

import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import sledwright.report.text.Screen;

/** One result in every format that its command writes; only the one that is asked for is ever made. */
final class Renderings {

    private final Map<Format, Function<Screen, byte[]>> byFormat = new EnumMap<>(Format.class);

    private Renderings() {
    }

    /** The three formats of every command. */
    static Renderings of(Function<Screen, String> text, Supplier<String> json, Supplier<String> csv) {
        Renderings renderings = new Renderings();
        renderings.byFormat.put(Format.TEXT, screen -> bytes(text.apply(screen)));
        return renderings.and(Format.JSON, json).and(Format.CSV, csv);
    }

    /** A result that was made before. */
    static Renderings asKept(Format format, byte[] bytes) {
        return new Renderings().andBytes(format, () -> bytes);
    }

    /** The same and one more format of text. */
    Renderings and(Format format, Supplier<String> text) {
        byFormat.put(format, screen -> bytes(text.get()));
        return this;
    }

    /** The same and one more format that is no text. */
    Renderings andBytes(Format format, Supplier<byte[]> made) {
        byFormat.put(format, screen -> made.get());
        return this;
    }

    byte[] in(Format format, Screen screen) {
        return byFormat.get(format).apply(screen);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
