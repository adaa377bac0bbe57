package sledwright.report.offer;

/** Who a document is for. */
public enum Audience {
    /** Sees parts, prices and figures; nothing of where parts come from, what they cost the shop and what lies in stock. */
    CUSTOMER,
    /** Sees lots, costs and margins as well. */
    SHOP
}
