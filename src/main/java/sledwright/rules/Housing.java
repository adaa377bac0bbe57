package sledwright.rules;

import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;
import sledwright.domain.Request;

/**
 * A filled enclosure at its site.
 *
 * @param request one that its sleds answer
 */
public record Housing(FilledEnclosure filled, Request request) {

    /** What the enclosure stands at; only its mains count. */
    public Limits site() {
        return request.limit();
    }
}
