package sledwright.report.page;

import java.util.List;
import sledwright.domain.Catalog;

/** The shop as it stands at the head of a document. */
public record Letterhead(String name, List<String> address, List<String> contact) {

    public static Letterhead of(Catalog shop) {
        return new Letterhead(shop.name(), shop.stationery().address(), shop.stationery().contact());
    }
}
