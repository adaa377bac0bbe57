package sledwright.report.build;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.MachineView;
import sledwright.metrics.Figures;

/** A build as JSON: what it is of, costs and reaches. */
public record BuildJson(BigDecimal price, @JsonUnwrapped Frame frame, @JsonUnwrapped PopulationJson heaviest,
                        @JsonUnwrapped EquipmentJson equipment, @JsonUnwrapped FiguresJson figures, @JsonUnwrapped Drawn drawn) {

    private static final double NOT_KNOWN = -1;

    /** A machine without its memory, and how many of it. */
    public record Frame(String platform, String processor, int processors, String cooling, String supply, int supplies, int machines) {
    }

    /**
     * Where it comes from.
     *
     * @param builds machines that differ, the heaviest first
     */
    public record Drawn(int leadDays, List<LineJson> lines, List<MachineJson> builds, FiguresOf figuresOf) {
    }

    /** Machines that are alike in every part. */
    public record MachineJson(int machines, @JsonUnwrapped PopulationJson population, List<EquipmentJson.VolumeJson> volumes,
                              @JsonUnwrapped FiguresJson.Speed speed, @JsonUnwrapped FiguresJson.Watts watts) {

        static MachineJson of(MachineView machine) {
            return new MachineJson(machine.count(), PopulationJson.of(machine), EquipmentJson.volumes(machine.fitout()),
                    FiguresJson.Speed.of(machine.figures()), FiguresJson.Watts.of(machine.figures()));
        }
    }

    /** A build and the day on which its last part is here. */
    public record Dated(@JsonUnwrapped BuildJson build, String readyOn) {

        public static Dated of(BuildView build, AnswerDay day) {
            return new Dated(BuildJson.of(build), day.in(build.leadDays()).toString());
        }
    }

    public static BuildJson of(BuildView build) {
        Figures figures = build.figures();
        return new BuildJson(build.price().orElse(null), new Frame(build.bare().platform(), build.bare().processorSku().orElse(null),
                build.bare().processors(),
                build.bare().cooling().orElse(null), build.bare().supply().orElse(null), build.bare().supplies(), build.count()),
                PopulationJson.of(build.heaviest()), EquipmentJson.of(build.heaviest().fitout()), FiguresJson.of(figures),
                new Drawn(build.leadDays(), LineJson.all(build.lines()), build.machines().stream().map(MachineJson::of).toList(),
                        FiguresOf.of(build, figures)));
    }

    /** Figure -> the first of the machines that differ which has it, by its place among {@code builds}. */
    public record FiguresOf(int modules, int slots, @JsonUnwrapped SpeedOf speed, @JsonUnwrapped WattsOf watts) {

        static FiguresOf of(BuildView build, Figures figures) {
            List<Figures> each = build.machines().stream().map(MachineView::figures).toList();
            int heaviest = each.indexOf(build.heaviest().figures());
            int slowest = place(figures.speed().mts(), each, machine -> machine.speed().mts());
            int worker = place(figures.work(), each, Figures::work);
            return new FiguresOf(heaviest, heaviest,
                    new SpeedOf(slowest, slowest, place(figures.bandwidthGbs(), each, Figures::bandwidthGbs), worker, worker),
                    new WattsOf(place(figures.loadW(), each, Figures::loadW),
                            place(figures.wallW().orElse(NOT_KNOWN), each, machine -> machine.wallW().orElse(NOT_KNOWN))));
        }
    }

    /** The machines of {@link FiguresJson.Speed}. */
    public record SpeedOf(int memoryMts, int speedSetBy, int bandwidthGbs, int work, int workHeldBy) {
    }

    /** The machines of {@link FiguresJson.Watts}. */
    public record WattsOf(int loadW, int wallW) {
    }

    /** The first machine that has the figure. */
    private static int place(double figure, List<Figures> machines, ToDoubleFunction<Figures> of) {
        return machines.stream().map(of::applyAsDouble).toList().indexOf(figure);
    }
}
