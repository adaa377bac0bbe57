package sledwright.report.sheet;

/** What a drawing is made of, in the order in which it is drawn. */
public sealed interface Shape {

    /** How a box looks. Every look differs from the others by line, hatching or shape, not by colour alone. */
    enum Look {
        BOARD, PANEL, PROCESSOR, NO_PROCESSOR_THERE, FILLED, EMPTY, COVERED, NO_PROCESSOR, TAG, BADGE, BLANK
    }

    /** The area that it takes. */
    Box box();

    /** A box of some look. */
    record Area(Box box, Look look) implements Shape {
    }

    /**
     * A line of text, which starts at the left end of its box.
     *
     * @param box  what the text takes at most; the baseline is {@link #baseline()}
     * @param size of the font
     * @param pale white on black
     */
    record Words(Box box, String text, double size, boolean bold, boolean pale) implements Shape {

        /** Above and below the baseline, as shares of the size; every letter of Noto Sans and DejaVu Sans stays within. */
        private static final double ASCENT = 0.95;
        private static final double DESCENT = 0.25;

        static Words of(String text, double x, double y, double size, boolean bold) {
            return new Words(new Box(x, y, TextWidth.of(text, size, bold), size * (ASCENT + DESCENT)), text, size, bold, false);
        }

        /** The same that ends where it would have begun. */
        Words endingThere() {
            return new Words(new Box(box.x() - box.width(), box.y(), box.width(), box.height()), text, size, bold, pale);
        }

        Words inPale() {
            return new Words(box, text, size, bold, true);
        }

        public double baseline() {
            return box.y() + size * ASCENT;
        }
    }
}
