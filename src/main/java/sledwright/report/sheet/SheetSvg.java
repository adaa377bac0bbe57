package sledwright.report.sheet;

import java.util.List;
import java.util.stream.Collectors;
import sledwright.report.sheet.BoardDrawing.Captioned;

/** The boards of all sheets as one drawing. */
public final class SheetSvg {

    private SheetSvg() {
    }

    public static String of(SheetView view) {
        boolean several = view.sheets().size() > 1;
        List<Captioned> boards = view.sheets().stream()
                .map(sheet -> SheetWords.drawn(sheet, several ? SheetWords.machines(view, sheet) : "")).toList();
        String words = view.sheets().stream().map(SheetWords::description).collect(Collectors.joining(" "));
        return BoardSvg.file(BoardDrawing.of(boards), SheetWords.title(view), words);
    }
}
