package sledwright.explain;

/**
 * Why a part that somebody asked about is not in the best build.
 *
 * @param message finished sentences
 */
public record WhyNot(String sku, String message) {
}
