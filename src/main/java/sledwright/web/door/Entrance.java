package sledwright.web.door;

import java.util.Optional;
import sledwright.web.users.LoginBrake;
import sledwright.web.users.Role;
import sledwright.web.users.Secrets;
import sledwright.web.users.Session;
import sledwright.web.users.Sessions;
import sledwright.web.users.Staff;

/**
 * Who is known to the server. Without users whoever reaches it is its owner, and it can be reached from its own machine alone.
 *
 * @param token  of everybody, where there are no users
 * @param secure whether browsers reach it by TLS alone
 */
public record Entrance(Optional<Staff> staff, Sessions sessions, LoginBrake brake, String token, boolean secure) {

    public static Entrance of(Optional<Staff> staff, boolean secure) {
        return new Entrance(staff, new Sessions(System::currentTimeMillis), new LoginBrake(System::currentTimeMillis), Secrets.fresh(),
                secure);
    }

    /** @param session the name that the browser keeps */
    Optional<Visitor> visitor(Optional<String> session) {
        if (staff.isEmpty()) {
            return Optional.of(new Visitor("", Role.OWNER, token));
        }
        return session.flatMap(name -> staff.get().session(sessions, name)).map(Entrance::visitor);
    }

    static Visitor visitor(Session session) {
        return new Visitor(session.user().name(), session.user().role(), session.token());
    }
}
