package sledwright.report.sheet;

import java.util.Locale;
import sledwright.report.sheet.Shape.Area;
import sledwright.report.sheet.Shape.Words;

/** A drawing as SVG, of the plainest means, which every viewer knows: rectangles, lines, circles and text. */
final class BoardSvg {

    private static final String FONTS = "'Noto Sans', 'DejaVu Sans', 'Segoe UI', Arial, sans-serif";
    private static final String INK = "#101418";
    private static final double HATCH = 6;

    private final StringBuilder out = new StringBuilder();

    private BoardSvg() {
    }

    /**
     * A file of its own.
     *
     * @param description the drawing in words, for those who cannot see it
     */
    static String file(BoardDrawing drawing, String title, String description) {
        String texts = "<title id=\"title\">%s</title>\n<desc id=\"text\">%s</desc>\n".formatted(escaped(title), escaped(description));
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + svg(drawing, "aria-labelledby=\"title text\"", texts) + "\n";
    }

    /**
     * An element within a page.
     *
     * @param id tells it from other drawings of the page
     */
    static String element(BoardDrawing drawing, String description, String id) {
        return svg(drawing, "id=\"%s\" aria-label=\"%s\"".formatted(id, escaped(description)), "");
    }

    private static String svg(BoardDrawing drawing, String attributes, String texts) {
        BoardSvg svg = new BoardSvg();
        svg.out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\" height=\"%s\" viewBox=\"0 0 %1$s %2$s\" role=\"img\" %s>\n%s"
                .formatted(
                number(BoardGrid.WIDTH), number(drawing.height()), attributes, texts));
        svg.out.append("<g font-family=\"%s\" fill=\"%s\">\n".formatted(FONTS, INK));
        drawing.shapes().forEach(svg::draw);
        return svg.out.append("</g>\n</svg>").toString();
    }

    private void draw(Shape shape) {
        if (shape instanceof Area area) {
            area(area);
        } else if (shape instanceof Words words) {
            out.append("<text x=\"%s\" y=\"%s\" font-size=\"%s\"%s%s>%s</text>\n"
                    .formatted(number(words.box().x()), number(words.baseline()), number(words.size()), words.bold()
                    ? " font-weight=\"700\"" : "", words.pale() ? " fill=\"#ffffff\"" : "", escaped(words.text())));
        }
    }

    private void area(Area area) {
        Box box = area.box();
        switch (area.look()) {
            case BOARD -> rectangle(box, 6, "#f4f5f2", INK, 1.6, "");
            case PANEL -> rectangle(box, 4, "#ffffff", "#6b7480", 0.8, "");
            case PROCESSOR -> processor(box);
            case NO_PROCESSOR_THERE -> rectangle(box, 2, "#ffffff", "#6b7480", 1, "3 2");
            case FILLED -> rectangle(box, 2, "#dce9f5", INK, 1.7, "");
            case EMPTY -> rectangle(box, 2, "#ffffff", "#59626d", 0.7, "");
            case COVERED -> covered(box);
            case NO_PROCESSOR -> rectangle(box, 2, "#ffffff", "#6b7480", 0.9, "1.5 3");
            case TAG -> rectangle(box, 2, INK, INK, 0.5, "");
            case BLANK -> out.append("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n"
                    .formatted(number(box.x()), number(box.y()), number(box.width()), number(box.height())));
            case BADGE -> rectangle(box.inset(0.5, 0.5), box.height() / 2, "#ffffff", INK, 1, "");
        }
    }

    /** A square with the fins of the heat sink and the mark of the first contact. */
    private void processor(Box box) {
        rectangle(box, 2, "#e9e6dc", INK, 1.4, "");
        for (double x = box.x() + 5; x < box.right() - 3; x += 4) {
            line(x, box.y() + 4, x, box.bottom() - 8, 0.8);
        }
        out.append("<path d=\"M%s %s v-5 l5 5 z\" fill=\"%s\"/>\n".formatted(number(box.x() + 2.5), number(box.bottom() - 2.5), INK));
    }

    /** Hatched, with the text on white. */
    private void covered(Box box) {
        rectangle(box, 2, "#ffffff", "#59626d", 0.9, "");
        for (double start = box.x() - box.height() + HATCH; start < box.right(); start += HATCH) {
            double from = Math.max(start, box.x());
            double to = Math.min(start + box.height(), box.right());
            line(from, box.bottom() - (from - start), to, box.bottom() - (to - start), 0.8);
        }
    }

    private void rectangle(Box box, double corner, String fill, String stroke, double width, String dashes) {
        out.append("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" rx=\"%s\" fill=\"%s\" stroke=\"%s\" stroke-width=\"%s\"%s/>\n"
                .formatted(
                number(box.x()), number(box.y()), number(box.width()), number(box.height()), number(corner), fill, stroke, number(width),
                dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\""));
    }

    private void line(double fromX, double fromY, double toX, double toY, double width) {
        out.append("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"#59626d\" stroke-width=\"%s\"/>\n"
                .formatted(number(fromX), number(fromY), number(toX), number(toY), number(width)));
    }

    /** To a hundredth, without trailing zeros. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
    }

    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(character -> {
            switch (character) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(Character.isISOControl(character) || !isText(character) ? 0xFFFD : character);
            }
        });
        return safe.toString();
    }

    /** Halves of pairs and the last two characters of a plane are no text of XML. */
    private static boolean isText(int character) {
        return (character < Character.MIN_SURROGATE || character > Character.MAX_SURROGATE) && (character & 0xFFFE) != 0xFFFE;
    }
}
