package sledwright.input;

import java.util.List;
import java.util.stream.Collectors;

/** Input that cannot be used, with every fault found in it. */
public final class FaultsException extends RuntimeException {

    private final List<Fault> faults;

    public FaultsException(List<Fault> faults) {
        super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    /** At least one. */
    public List<Fault> faults() {
        return faults;
    }
}
