package sledwright.label;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sledwright.domain.ModuleType;

/**
 * The letter that states how a module is buffered.
 *
 * <p>R, L, E and U as server makers' guides print them. DDR5's P is from one trade list, which prints it on a
 * registered module of 72 bits, and otherwise from memory.
 */
public enum ModuleLetter {
    R(ModuleType.RDIMM, "registered", false),
    L(ModuleType.LRDIMM, "load-reduced", false),
    E(ModuleType.UDIMM, "unbuffered, with ECC", false),
    U(ModuleType.UDIMM, "unbuffered, without ECC", false),
    P(ModuleType.RDIMM, "registered, with 4 check bits for 32 data bits", true);

    private final ModuleType type;
    private final String meaning;
    private final boolean fromMemory;

    ModuleLetter(ModuleType type, String meaning, boolean fromMemory) {
        this.type = type;
        this.meaning = meaning;
        this.fromMemory = fromMemory;
    }

    static List<ModuleLetter> of(Generation generation) {
        return Arrays.stream(values()).filter(letter -> letter != P || generation == Generation.DDR5).toList();
    }

    static Optional<ModuleLetter> named(String name, Generation generation) {
        return of(generation).stream().filter(letter -> letter.name().equals(name)).findFirst();
    }

    /** The type when nothing is stacked. */
    public ModuleType type() {
        return type;
    }

    String meaning() {
        return meaning;
    }

    boolean fromMemory() {
        return fromMemory;
    }
}
