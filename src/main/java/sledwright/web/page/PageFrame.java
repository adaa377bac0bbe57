package sledwright.web.page;

import java.util.List;
import java.util.Map;
import sledwright.input.Fault;
import sledwright.web.door.Visitor;
import sledwright.web.shop.OpenShop;
import sledwright.web.shop.ShopState;

/** What stands around every page. */
final class PageFrame {

    static final String STOCK = "/stock";
    static final String ASKED = "/asked";
    static final String PROMISES = "/promises";

    private static final List<String> PAGES = List.of("/", "/board", "/work", "/book", PROMISES, ASKED, STOCK, "/catalogue");

    private PageFrame() {
    }

    /** @param here the page, as its frame knows it */
    static Map<String, Object> of(OpenShop shop, String here, Visitor visitor) {
        ShopState now = shop.state();
        return Map.of("shop", now.catalog().name(), "here", here, "faults", now.faults().stream().map(Fault::toString).toList(),
                "who", visitor.name(), "token", visitor.token(), "keeps", visitor.may("POST", "/api/book"),
                "may", PAGES.stream().filter(path -> visitor.may("GET", path)).toList());
    }
}
