package sledwright.explain;

import java.util.List;
import sledwright.generator.Findings;

/** Answers what a person asks about findings. */
@FunctionalInterface
public interface Explainer {

    /**
     * What conflicts where nothing was found, and why each of the parts is not in the best build.
     *
     * @param whyNot part numbers of the catalogue
     */
    Explanation explain(Findings findings, List<String> whyNot);
}
