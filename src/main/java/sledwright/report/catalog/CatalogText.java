package sledwright.report.catalog;

import sledwright.desk.view.CatalogView;
import sledwright.explain.audit.Warning;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** What a catalogue holds, for people. */
public final class CatalogText {

    private CatalogText() {
    }

    public static String of(CatalogView view, Screen screen) {
        Page page = new Page(screen);
        page.text(Ink.HEAD, view.name());
        page.text(Ink.GOOD, "no faults; prices of %s in %s".formatted(view.pricedOn(), view.currency()));
        TextTable table = new TextTable().column("", Fit.LEFT).column("", Fit.RIGHT);
        view.counts().forEach((what, count) -> table.row(what, count));
        page.gap().table(table);
        if (!view.enclosures().isEmpty()) {
            page.heading("Sled enclosures").table(enclosures(view));
        }
        if (!view.unsold().isEmpty()) {
            page.heading("Parts without an offer, which cannot be bought").text(String.join(", ", view.unsold()));
        }
        if (!view.warnings().isEmpty()) {
            page.heading("Worth a look").items(view.warnings().stream().map(Warning::toString).toList());
        }
        return page.toString();
    }

    private static TextTable enclosures(CatalogView view) {
        TextTable table = new TextTable().column("sku", Fit.LEFT).column("bays", Fit.RIGHT).column("takes", Fit.FLEXIBLE)
                .column("fed by", Fit.LEFT)
                .column("W for sleds", Fit.RIGHT);
        for (CatalogView.Housed enclosure : view.enclosures()) {
            String sku = enclosure.sku();
            String bays = String.valueOf(enclosure.bays());
            String takes = String.join(", ", enclosure.takes());
            for (CatalogView.Feed feed : enclosure.feeds()) {
                table.row(sku, bays, takes, "%s x %s, %s may fail".formatted(feed.count(), feed.sku(), feed.redundant()),
                        Numbers.plain(feed.sledsW()));
                sku = "";
                bays = "";
                takes = "";
            }
        }
        return table;
    }
}
