package sledwright.web.door;

import org.eclipse.jetty.server.Request;
import sledwright.web.users.Role;

/**
 * Who asks.
 *
 * @param name  empty where the server knows no users
 * @param token comes back with every change; empty where nobody is logged in
 */
public record Visitor(String name, Role role, String token) {

    private static final String WHO = Visitor.class.getName();

    /** Whoever sent a request that the door let through. */
    public static Visitor of(Request request) {
        if (request.getAttribute(WHO) instanceof Visitor known) {
            return known;
        }
        throw new IllegalStateException("nobody was asked who they are");
    }

    void enters(Request request) {
        request.setAttribute(WHO, this);
    }

    /** Whether this role may open an address. */
    public boolean may(String method, String path) {
        return Rights.of(method, path).allows(role);
    }
}
