package sledwright.report;

import sledwright.report.Table.Fit;

/** What a catalogue holds, for people. */
public final class CatalogText {

    private CatalogText() {
    }

    public static String of(CatalogView view, Screen screen) {
        Page page = new Page(screen);
        page.text(Ink.HEAD, view.name());
        page.text(Ink.GOOD, "no faults; prices of %s in %s".formatted(view.pricedOn(), view.currency()));
        Table table = new Table().column("", Fit.LEFT).column("", Fit.RIGHT);
        view.counts().forEach((what, count) -> table.row(what, String.valueOf(count)));
        page.gap().table(table);
        if (!view.unsold().isEmpty()) {
            page.heading("Parts without an offer, which cannot be bought").text(String.join(", ", view.unsold()));
        }
        return page.toString();
    }
}
