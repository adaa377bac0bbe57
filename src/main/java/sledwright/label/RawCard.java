package sledwright.label;

import java.util.Optional;

/**
 * The board design of a module.
 *
 * @param design letters
 */
public record RawCard(String design, Optional<String> revision) {

    /** As a label has it. */
    @Override
    public String toString() {
        return design + revision.orElse("");
    }
}
