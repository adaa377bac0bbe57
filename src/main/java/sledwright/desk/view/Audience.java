package sledwright.desk.view;

import java.util.Locale;

/** Who reads an answer. */
public enum Audience {
    /** Sees parts, prices and figures; nothing of where parts come from, what they cost the shop and what lies in stock. */
    CUSTOMER,
    /** Sees lots, suppliers and costs as well. */
    SHOP;

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
