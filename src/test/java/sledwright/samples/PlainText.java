package sledwright.samples;

import java.util.Locale;

/** Formats that come out the same in every locale, as files that must repeat byte by byte need. */
final class PlainText {

    private PlainText() {
    }

    static String of(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }

    static String tenths(double value) {
        return of("%.1f", value);
    }

    static String cents(double value) {
        return of("%.2f", value);
    }
}
