package sledwright.report.sheet;

import java.util.Map;
import sledwright.report.page.Pages;

/** A drawing as SVG, by the template {@code board.ftlx}, which has what each look is drawn with. */
final class BoardSvg {

    private static final String TEMPLATE = "board.ftlx";

    private BoardSvg() {
    }

    /**
     * A file of its own.
     *
     * @param description the drawing in words, for those who cannot see it
     */
    static String file(BoardDrawing drawing, String title, String description) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + Pages.filled(TEMPLATE, Map.of("drawing", drawing, "width", BoardGrid.WIDTH,
                "title", title, "description", description)) + "\n";
    }

    /**
     * An element within a page.
     *
     * @param id distinguishes it from other drawings of the page
     */
    static String element(BoardDrawing drawing, String description, String id) {
        return Pages.filled(TEMPLATE, Map.of("drawing", drawing, "width", BoardGrid.WIDTH, "description", description, "id", id));
    }
}
