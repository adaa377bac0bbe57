package sledwright.web.http;

import java.util.List;
import java.util.Map;
import sledwright.input.Fault;
import sledwright.input.Place;

/** A request that is not answered; the status code and the faults say why. */
public final class RefusedException extends RuntimeException {

    private final int status;
    private final List<Fault> faults;
    private final Map<String, String> headers;

    private RefusedException(int status, List<Fault> faults, Map<String, String> headers) {
        super(faults.toString(), null, false, false);
        this.status = status;
        this.faults = List.copyOf(faults);
        this.headers = Map.copyOf(headers);
    }

    /** Something is wrong in what was sent. */
    public static RefusedException of(List<Fault> faults) {
        return new RefusedException(400, faults, Map.of());
    }

    /**
     * @param place what of the request is meant
     * @param value what stands there; empty: nothing that could be shown
     */
    public static RefusedException of(int status, String place, String value, String message) {
        return new RefusedException(status, List.of(new Fault(Place.of(place), message, value)), Map.of());
    }

    /** The same with one more header in the answer. */
    public RefusedException with(String header, String value) {
        return new RefusedException(status, faults, Map.of(header, value));
    }

    public int status() {
        return status;
    }

    public List<Fault> faults() {
        return faults;
    }

    public Map<String, String> headers() {
        return headers;
    }
}
