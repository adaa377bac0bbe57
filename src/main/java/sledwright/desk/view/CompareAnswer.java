package sledwright.desk.view;

import sledwright.domain.Catalog;

/**
 * What money buys.
 *
 * @param shop the catalogue that it was bought from, for documents, which bear its name
 */
public record CompareAnswer(CompareView view, Catalog shop) {
}
