package sledwright.report.ask;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.BuildView;
import sledwright.metrics.Figures;
import sledwright.report.build.BuildText;
import sledwright.report.page.Wording;

/** What a build reaches, as figures under their labels. */
final class BuildFacts {

    private BuildFacts() {
    }

    /** A figure under its label. */
    public record Fact(String label, String value) {
    }

    static List<Fact> of(BuildView build, Wording words) {
        Figures figures = build.figures();
        List<Fact> facts = new ArrayList<>(List.of(
                new Fact("Cores", String.valueOf(figures.cores())),
                new Fact("All cores at", words.figure(figures.allCoreGhz()) + " GHz"),
                new Fact("Memory", words.figure(figures.memoryGb()) + " GB"),
                new Fact("Memory runs at", "%s MT/s, held by %s".formatted(figures.speed().mts(), figures.speed().setBy().label())),
                new Fact("Bandwidth", words.figure(figures.bandwidthGbs()) + " GB/s"),
                new Fact("Throughput", BuildText.throughput(figures)),
                new Fact("Load", words.figure(figures.loadW()) + " W"),
                new Fact("Slots left", String.valueOf(figures.spareSlots()))));
        if (figures.usableGb() != figures.memoryGb()) {
            facts.add(3, new Fact("Usable", words.figure(figures.usableGb()) + " GB"));
        }
        figures.wallW().ifPresent(wall -> facts.add(new Fact("From the wall", words.figure(wall) + " W")));
        return facts;
    }
}
