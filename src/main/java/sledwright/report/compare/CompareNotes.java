package sledwright.report.compare;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.CompareView;
import sledwright.domain.Stationery;
import sledwright.metrics.EnergyCost;
import sledwright.words.Numbers;

/** What the words of a comparison mean, for every format that has room for it. */
final class CompareNotes {

    record Note(String term, String meaning) {
    }

    private CompareNotes() {
    }

    /** @param shop which may add a tax to its prices */
    static List<Note> of(CompareView view, Stationery shop) {
        List<Note> notes = new ArrayList<>();
        notes.add(new Note("Point",
                "A build than which no valid one costs less and gives as much of the figure, or as little and gives more."
                + " Costs are of all machines, figures of one."));
        notes.add(new Note("Per unit",
                "The cost of each unit of the figure. Of the load: of each watt that is saved against the cheapest point."));
        notes.add(new Note("Extra",
                "What a point costs more than the one before it, how much more of the figure that buys (of the load: saves),"
                + " and what each unit of that costs."));
        notes.add(new Note("Knee",
                "Where the curve bends most: with cost and figure each scaled from 0 at the first point to 1 at the last, the point"
                + " furthest beyond the straight line between these two."));
        notes.add(new Note("Best per unit", "The point whose unit costs least."));
        shop.taxPercent().ifPresent(percent -> notes.add(new Note("Price",
                "Before %s, which is %s %% of it.".formatted(shop.taxName(), Numbers.plain(percent.doubleValue())))));
        view.beforeDiscount().ifPresent(words -> notes.add(new Note("Discount", words)));
        if (view.byPlatform()) {
            notes.add(new Note("Ahead", "No other platform gives as much for less."));
        }
        if (view.energy().isPresent()) {
            notes.add(new Note("Total cost",
                    "The price and the energy: the watts from the wall at the mean share of the load, for %s hours a year. Where the"
                    .formatted(EnergyCost.HOURS_A_YEAR) + " efficiency of the supply is not known, its loss is left out."));
        }
        return notes;
    }
}
