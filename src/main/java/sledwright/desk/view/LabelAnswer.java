package sledwright.desk.view;

import java.util.List;
import sledwright.input.Fault;

/**
 * Modules as read from labels or SPDs.
 *
 * @param skipped why others could not be read
 */
public record LabelAnswer(LabelView view, List<Fault> skipped) {

    public LabelAnswer {
        skipped = List.copyOf(skipped);
    }
}
