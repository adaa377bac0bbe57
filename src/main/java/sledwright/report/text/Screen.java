package sledwright.report.text;

import sledwright.words.Manner;

/**
 * What a text is written for.
 *
 * @param width  columns; at least {@link #LEAST_WIDTH}
 * @param colour whether it shows colour
 * @param manner how it gives advice
 */
public record Screen(int width, boolean colour, Manner manner) {

    public static final int LEAST_WIDTH = 80;

    /** Paper: the least width, no colour. */
    public static final Screen PLAIN = new Screen(LEAST_WIDTH, false);

    /** The same for readers on a page, who have no options to give. */
    public static final Screen PAGE = new Screen(LEAST_WIDTH, false, Manner.PLAIN);

    public Screen {
        width = Math.max(width, LEAST_WIDTH);
    }

    public Screen(int width, boolean colour) {
        this(width, colour, Manner.COMMAND_LINE);
    }
}
