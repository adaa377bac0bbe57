package sledwright.report.ask;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.MachineView;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;

/** A build as a file of kind {@code build}, to be changed by hand and judged. */
public final class BuildFileText {

    private final List<String> lines = new ArrayList<>();

    private BuildFileText() {
    }

    /** The heaviest machine of a build. */
    public static String of(BuildView build) {
        return new BuildFileText().text(build);
    }

    private String text(BuildView build) {
        MachineView machine = build.heaviest();
        line("kind", "build");
        line("platform", quoted(build.bare().platform()));
        build.bare().processorSku().ifPresent(sku -> line("processor", quoted(sku)));
        line("processors", String.valueOf(build.bare().processors()));
        build.bare().cooling().ifPresent(sku -> line("cooling", quoted(sku)));
        build.bare().supply().ifPresent(sku -> {
            line("supply", quoted(sku));
            line("supply_count", String.valueOf(build.bare().supplies()));
        });
        if (machine.fitout().housed().isPresent()) {
            line("enclosure", "new");
        }
        section("modules", machine.slots());
        fitout(machine.fitout());
        return String.join("\n", lines) + "\n";
    }

    private void fitout(Fitout fitout) {
        if (!fitout.volumes().isEmpty()) {
            lines.add("volumes:");
            fitout.volumes().forEach(this::volume);
        }
        fitout.driver().ifPresent(driver -> line("driver", quoted(driver)));
        section("cards", fitout.cards().entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, card -> card.getValue().sku())));
        section("extras", fitout.extrasBySku());
    }

    private void volume(Volume volume) {
        lines.add("  - { name: %s, level: %s, group: %s, drives: %s%s }".formatted(quoted(volume.name()), volume.level().number(),
                quoted(volume.group()), skus(volume.drives()),
                volume.hotSpares().isEmpty() ? "" : ", hot_spares: " + skus(volume.hotSpares())));
    }

    private static String skus(Collection<Drive> drives) {
        return drives.stream().map(drive -> quoted(drive.sku())).collect(Collectors.joining(", ", "[", "]"));
    }

    private void section(String key, Map<String, ?> values) {
        if (!values.isEmpty()) {
            lines.add(key + ":");
            values.forEach((name, value) -> lines.add("  %s: %s"
                    .formatted(quoted(name), value instanceof String sku ? quoted(sku) : value)));
        }
    }

    private void line(String key, String value) {
        lines.add(key + ": " + value);
    }

    /** Plain where YAML cannot take it for anything else. */
    private static String quoted(String text) {
        return text.matches("[A-Za-z][A-Za-z0-9._-]*|[0-9]+[A-Z][A-Za-z0-9._-]*") && !text.matches("(?i)null|true|false") ? text
                : "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }
}
