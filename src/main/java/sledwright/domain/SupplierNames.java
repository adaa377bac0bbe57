package sledwright.domain;

import java.util.Map;
import java.util.Set;

/**
 * What a shop calls those who supply it. Names that differ only by upper and lower case and by blanks around them are one.
 *
 * @param names key of a name ({@link Lot#supplierKey}) -> the name that it stands for
 * @param own   keys of those that are the shop's own shelf
 */
public record SupplierNames(Map<String, String> names, Set<String> own) {

    /** Of a shop that says nothing of the kind. */
    public static final SupplierNames AS_WRITTEN = new SupplierNames(Map.of(), Set.of());

    public SupplierNames {
        names = Map.copyOf(names);
        own = Set.copyOf(own);
    }

    /** The name that one as written stands for. */
    public String resolved(String name) {
        return names.getOrDefault(Lot.supplierKey(name), name);
    }

    /** Whether what a resolved name supplies stands on the shop's own shelf, so that nobody has to deliver it. */
    public boolean isOwn(String name) {
        return own.contains(Lot.supplierKey(name));
    }
}
