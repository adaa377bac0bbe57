package sledwright.web.users;

/**
 * Somebody who is logged in.
 *
 * @param user  as the file had it at the time
 * @param token stands in every page and comes back with every change, which a page of another site could not send
 */
public record Session(User user, String token) {
}
