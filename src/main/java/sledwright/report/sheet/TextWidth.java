package sledwright.report.sheet;

/**
 * How wide a text becomes on a drawing whose reader may not have the font that it asks for: the wider of the advance widths of Noto Sans
 * and DejaVu Sans, in thousandths of the font size. Characters beyond ASCII
 * count as a full em, which is wider than the letters of nearly every alphabet.
 */
final class TextWidth {

    private static final int FULL = 1000;
    /** Below what anybody sees; sums of widths are not exact. */
    private static final double HAIR = 1e-6;

    private static final int[] REGULAR = {318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 551, 838, 318, 361, 318, 372, 637, 637, 637,
            637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 531, 1000, 685, 687, 699, 771, 632, 576, 775, 752, 339, 295, 656,
            558, 907, 760, 788, 605, 788, 695, 635, 611, 732, 685, 989, 686, 611, 686, 391, 372, 391, 838, 500, 500, 613, 635, 550, 635,
            616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 413, 521, 393, 634, 592, 818, 592, 592, 525, 637,
            551, 637, 838};

    private static final int[] BOLD = {349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 545, 838, 380, 416, 380, 413, 696, 696, 696,
            696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 581, 1000, 774, 763, 734, 831, 684, 684, 821, 837, 389, 373, 775,
            638, 996, 837, 851, 733, 851, 771, 721, 683, 813, 774, 1104, 771, 725, 726, 458, 413, 458, 838, 500, 500, 675, 716, 593, 716,
            679, 436, 716, 712, 343, 343, 666, 343, 1042, 712, 688, 716, 716, 494, 596, 479, 712, 652, 924, 646, 652, 583, 712,
            551, 712, 838};

    private TextWidth() {
    }

    /** In the unit of {@code size}; never less than what is drawn. */
    static double of(String text, double size, boolean bold) {
        int[] widths = bold ? BOLD : REGULAR;
        int sum = 0;
        for (int i = 0; i < text.length(); i++) {
            int letter = text.charAt(i) - ' ';
            if (letter >= 0 && letter < widths.length) {
                sum += widths[letter];
            } else if (!Character.isLowSurrogate(text.charAt(i))) {
                sum += FULL;
            }
        }
        return sum * size / FULL;
    }

    /** The text, or as much of its beginning and end as fits, with dots between. */
    static String within(String text, double size, boolean bold, double room) {
        if (of(text, size, bold) <= room + HAIR) {
            return text;
        }
        int[] characters = text.codePoints().toArray();
        for (int kept = characters.length - 1; kept > 0; kept--) {
            int head = (kept + 1) / 2;
            String shorter = new String(characters, 0, head) + ".."
                    + new String(characters, characters.length - (kept - head), kept - head);
            if (of(shorter, size, bold) <= room + HAIR) {
                return shorter;
            }
        }
        return "";
    }
}
