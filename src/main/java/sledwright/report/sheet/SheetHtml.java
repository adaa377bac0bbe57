package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.report.page.Markup;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.sheet.SheetView.Pick;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Stage;

/** The bench sheet as a page, laid out so that a machine takes one sheet of paper where it fits. */
public final class SheetHtml {

    /**
     * One sheet as the template shows it.
     *
     * @param machines which it is for
     * @param left     stages of the left half of the page
     */
    public record Leaf(Sheet sheet, String machines, String machine, SizedDrawing drawing, List<Step> left, List<Step> right,
                       List<SheetWords.Row> expected) {
    }

    /** A drawing and its size on paper. */
    public record SizedDrawing(Markup svg, double widthMm, double heightMm) {
    }

    /** Units of one lot of an order, and for whom they are. */
    public record Load(Pick pick, String shares) {
    }

    /** An enclosure and what goes into its bays. */
    public record Berthing(String title, List<Bay> bays) {
    }

    /** A bay and the machine in it. */
    public record Bay(int number, String machine) {
    }

    /** A stage with its number. */
    public record Step(int number, String title, List<String> steps) {
    }

    /** Between the margins of A4 and of Letter. */
    private static final double MOST_WIDTH_MM = BoardGrid.WIDTH / 72 * 25.4;
    private static final double MOST_HEIGHT_MM = BoardGrid.MOST_HEIGHT / 72 * 25.4;

    /** How many letters of small print stand side by side in half a page, and how many lines high a heading and a gap are. */
    private static final double LETTERS = 54;
    private static final double HEADING = 1.9;
    private static final double GAP = 0.2;

    private SheetHtml() {
    }

    /** @param head as {@link #title} and {@link #subject} have it */
    public static String of(SheetView view, PageHead head) {
        List<Leaf> leaves = new ArrayList<>();
        for (Sheet sheet : view.sheets()) {
            String id = "board-" + (leaves.size() + 1);
            BoardDrawing drawing = BoardDrawing.of(List.of(SheetWords.drawn(sheet, "")));
            double widthMm = Math.min(MOST_WIDTH_MM, MOST_HEIGHT_MM * BoardGrid.WIDTH / drawing.height());
            List<Step> steps = numbered(sheet.work().stages());
            int split = split(sheet.work().stages());
            SizedDrawing sized = new SizedDrawing(new Markup(BoardSvg.element(drawing, "The board. " + SheetWords.description(sheet), id)),
                    widthMm, widthMm * drawing.height() / BoardGrid.WIDTH);
            leaves.add(new Leaf(sheet, SheetWords.machines(view, sheet), SheetWords.machine(sheet.machine()), sized,
                    steps.subList(0, split), steps.subList(split, steps.size()), SheetWords.expected(sheet.checked().expected())));
        }
        Map<String, Object> model = new HashMap<>(Map.of("title", SheetWords.title(view), "leaves", leaves, "notice",
                view.notice().orElse(""), "cautions", view.cautions(), "nothing", SheetWords.NOTHING_TO_DO, "handling", SheetWords.HANDLING,
                "notes", SheetWords.NOTES));
        view.order().ifPresent(order -> {
            model.put("lots", order.lots().stream().map(fetch -> new Load(fetch.pick(), SheetWords.shares(fetch))).toList());
            model.put("frames", order.frames().stream().map(SheetHtml::berthing).toList());
        });
        return Pages.html("sheet.ftlh", head, model);
    }

    private static Berthing berthing(SheetView.Frame frame) {
        return new Berthing(SheetWords.frame(frame),
                frame.sleds().stream().map(seat -> new Bay(seat.bay(), "%s %s".formatted(seat.line(), seat.machine()))).toList());
    }

    private static List<Step> numbered(List<Stage> stages) {
        List<Step> steps = new ArrayList<>();
        stages.forEach(stage -> steps.add(new Step(steps.size() + 1, stage.title(), stage.steps())));
        return steps;
    }

    /** How many stages stand in the left half so that the higher half is as low as can be. */
    private static int split(List<Stage> stages) {
        double left = 0;
        double right = stages.stream().mapToDouble(SheetHtml::lines).sum();
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

    public static String title(SheetView view) {
        return SheetWords.title(view);
    }

    public static String subject(SheetView view) {
        return "Parts to pick, the board, the steps and what the first start must show";
    }
}
