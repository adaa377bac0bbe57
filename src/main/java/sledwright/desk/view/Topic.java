package sledwright.desk.view;

import sledwright.domain.Catalog;
import sledwright.domain.Request;

/**
 * What an answer is about.
 *
 * @param request  its name
 * @param machines how many it asks for
 * @param currency of all amounts, ISO 4217
 */
public record Topic(String request, int machines, String currency) {

    static Topic of(Request request, Catalog shop) {
        return new Topic(request.name(), request.machines(), shop.currency().getCurrencyCode());
    }
}
