package sledwright.rules;

import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;

/**
 * A filled enclosure at its site.
 *
 * @param site what the enclosure stands at; only its mains count
 */
public record Housing(FilledEnclosure filled, Limits site) {
}
