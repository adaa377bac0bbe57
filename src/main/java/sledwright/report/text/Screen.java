package sledwright.report.text;

/**
 * What a text is written for.
 *
 * @param width  columns; at least {@link #LEAST_WIDTH}
 * @param colour whether it shows colour
 */
public record Screen(int width, boolean colour) {

    public static final int LEAST_WIDTH = 80;

    /** Paper: the least width, no colour. */
    public static final Screen PLAIN = new Screen(LEAST_WIDTH, false);

    public Screen {
        width = Math.max(width, LEAST_WIDTH);
    }
}
