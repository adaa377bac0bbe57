package sledwright.samples;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.PartKind;
import sledwright.domain.Request;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;

/** A rule that no rulebook has: it stands beside the program, and only where a file names it. It answers to the altitude of the site. */
public final class ToyRule extends PartRule {

    private static final String KEY = "limit.altitude_m";
    private static final double HIGHEST_M = 1000;

    public ToyRule() {
        super("toy-rule", "No processor of eight cores works above 1000 m.", PartKind.PROCESSORS);
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return parts.processor().cores() != 8 || request.limit().altitudeM() <= HIGHEST_M;
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        return List.of(broken(parts.processor().sku(), "%s has eight cores, which the toy rule forbids up there.", parts.processor().sku()));
    }

    @Override
    public Set<String> answersTo() {
        return Set.of(KEY);
    }

    @Override
    public Stream<Double> turningPoints(String key, Limits site, Catalog catalog) {
        return Stream.of(HIGHEST_M);
    }
}
