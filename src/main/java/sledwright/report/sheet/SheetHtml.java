package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sledwright.report.page.Markup;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.sheet.SheetView.Pick;
import sledwright.report.sheet.SheetView.Pulled;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Stage;

/** The bench sheet as a page, laid out so that a machine takes one sheet of paper where it fits. */
public final class SheetHtml {

    /**
     * One sheet as the template shows it.
     *
     * @param widthMm of the drawing on paper
     */
    public record Leaf(String machines, boolean several, String machine, List<Pick> picks, List<Pulled> pulled, Markup drawing,
            double widthMm, double heightMm, List<Step> left, List<Step> right, List<SheetWords.Row> expected) {
    }

    /** A stage with its number. */
    public record Step(int number, String title, List<String> steps) {
    }

    /** Between the margins of A4 and of Letter. */
    private static final double MOST_WIDTH_MM = 182;
    private static final double MOST_HEIGHT_MM = 245;

    /** How many letters of small print stand side by side in half a page, and how many lines high a heading and a gap are. */
    private static final double LETTERS = 62;
    private static final double HEADING = 1.9;
    private static final double GAP = 0.2;

    private SheetHtml() {
    }

    /** @param head as {@link #title} and {@link #subject} have it */
    public static String of(SheetView view, PageHead head) {
        List<Leaf> leaves = new ArrayList<>();
        for (Sheet sheet : view.sheets()) {
            String id = "board-" + (leaves.size() + 1);
            BoardDrawing drawing = BoardDrawing.of(SheetWords.boards(sheet, ""));
            double widthMm = Math.min(MOST_WIDTH_MM, MOST_HEIGHT_MM * BoardGrid.WIDTH / drawing.height());
            List<SheetWords.Row> expected = SheetWords.expected(sheet.expected());
            List<Step> steps = numbered(sheet.stages());
            int split = split(sheet.stages(), besides(expected, view.cautions()));
            leaves.add(new Leaf(SheetWords.machines(view, sheet), sheet.machines() > 1, SheetWords.machine(sheet.machine()), sheet.picks(),
                    sheet.pulled(), new Markup(BoardSvg.element(drawing, "The board. " + SheetWords.description(sheet), id)), widthMm,
                    widthMm * drawing.height() / BoardGrid.WIDTH,
                    steps.subList(0, split), steps.subList(split, steps.size()), expected));
        }
        return Pages.html("sheet.ftlh", head, Map.of("title", SheetWords.title(view), "leaves", leaves, "cautions", view.cautions(),
                "nothing", SheetWords.NOTHING_TO_DO, "notes", SheetWords.NOTES));
    }

    private static List<Step> numbered(List<Stage> stages) {
        List<Step> steps = new ArrayList<>();
        stages.forEach(stage -> steps.add(new Step(steps.size() + 1, stage.title(), stage.steps())));
        return steps;
    }

    /** How many stages stand in the left half so that the higher half is as low as can be. */
    private static int split(List<Stage> stages, double besides) {
        double left = 0;
        double right = besides + stages.stream().mapToDouble(SheetHtml::lines).sum();
        double lowest = right;
        int split = 0;
        for (int number = 1; number <= stages.size(); number++) {
            left += lines(stages.get(number - 1));
            right -= lines(stages.get(number - 1));
            if (Math.max(left, right) < lowest) {
                lowest = Math.max(left, right);
                split = number;
            }
        }
        return split;
    }

    private static double lines(Stage stage) {
        return HEADING + stage.steps().stream().mapToDouble(SheetHtml::lines).sum();
    }

    private static double lines(String words) {
        return Math.ceil(words.length() / LETTERS) + GAP;
    }

    /** Lines of what stands below the steps of the right half. */
    private static double besides(List<SheetWords.Row> expected, List<String> cautions) {
        double table = expected.stream().mapToDouble(row -> lines(row.what() + row.expected()) + GAP).sum();
        return HEADING + table + lines(SheetWords.NOTES) + HEADING + cautions.stream().mapToDouble(SheetHtml::lines).sum();
    }

    public static String title(SheetView view) {
        return SheetWords.title(view);
    }

    public static String subject(SheetView view) {
        return "Parts to pick, the board, the steps and what the first start must show";
    }
}
