package sledwright.desk;

import java.util.List;
import sledwright.input.Source;

/**
 * Labels to be read.
 *
 * @param texts      labels, or their words one by one
 * @param files      of labels, one on each line
 * @param spds       of SPDs
 * @param skipFaulty whether the others are read when some cannot be
 */
public record LabelQuestion(List<String> texts, List<Source> files, List<Source> spds, boolean skipFaulty) {

    public LabelQuestion {
        texts = List.copyOf(texts);
        files = List.copyOf(files);
        spds = List.copyOf(spds);
    }
}
