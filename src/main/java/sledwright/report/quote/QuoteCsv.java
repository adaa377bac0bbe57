package sledwright.report.quote;

import java.util.List;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.Earnings;
import sledwright.desk.view.Payment;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.metrics.Figures;
import sledwright.report.build.MachineCells;
import sledwright.report.text.Csv;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** A quote as comma-separated values. */
public final class QuoteCsv {

    private QuoteCsv() {
    }

    /** One row for each alternative. */
    public static String of(QuoteView view) {
        List<String> header = MachineCells.between(
                List.of("rank", "request", "status", "machines", "price", "currency"),
                MachineCells.COLUMNS,
                List.of("cores", "memory_gb", "usable_gb", "memory_mts", "speed_set_by", "bandwidth_gbs", "throughput",
                        "throughput_estimated", "load_w", "wall_w", "base_ghz", "all_core_ghz", "spare_slots",
                "lead_days", "price_less_worth", "energy", "total", "discount_percent", "net", "tax", "gross", "earned", "reasons"));
        return Csv.write(header, view.alternatives().stream().map(alternative -> row(view, alternative)).toList());
    }

    private static List<Object> row(QuoteView view, Alternative alternative) {
        BuildView build = alternative.build();
        Figures figures = build.figures();
        return MachineCells.between(List.of(alternative.rank(), view.topic().request(), view.proof().status().label(), build.count(),
                Csv.cell(build.price()), view.topic().currency()), MachineCells.of(build),
                List.of(figures.cores(), figures.memoryGb(),
                Numbers.decimal(figures.usableGb()), figures.speed().mts(), figures.speed().setBy().label(),
                Numbers.decimal(figures.bandwidthGbs()), Numbers.decimal(figures.throughput()),
                String.valueOf(figures.throughputEstimated()), Numbers.decimal(figures.loadW()),
                figures.wallW().isPresent() ? Numbers.decimal(figures.wallW().getAsDouble()) : "", Numbers.decimal(figures.baseGhz()),
                Numbers.decimal(figures.allCoreGhz()), figures.spareSlots(), build.leadDays(),
                Csv.cell(alternative.weighed().priceLessWorth()), Csv.cell(alternative.weighed().energy()), Csv.cell(alternative.total()),
                Csv.cell(alternative.sale().pays().percent()), alternative.sale().pays().net(),
                Csv.cell(alternative.sale().pays().tax().map(Payment.Tax::amount)), alternative.sale().pays().gross(),
                Csv.cell(alternative.sale().earned().filter(Earnings::isKnown).map(Earnings::margin)),
                Sentence.joined(" ", alternative.sentences()).toString()));
    }
}
