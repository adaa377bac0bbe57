package sledwright.rules;

import sledwright.domain.FilledEnclosure;
import sledwright.domain.Request;

/**
 * A filled enclosure at its site.
 *
 * @param request one that its sleds answer
 */
public record Housing(FilledEnclosure filled, Request request) {
}
