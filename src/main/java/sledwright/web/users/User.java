package sledwright.web.users;

import java.util.regex.Pattern;

/**
 * Somebody who may log in.
 *
 * @param hash of the password, {@link PasswordHash}
 */
public record User(String name, Role role, String hash) {

    /** Nothing that looks like something else, on a page or in a log. */
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9._-]{0,39}");

    public static final String RIGHT_NAME = "must be 1 to 40 of the letters a to z, digits, dots, hyphens and underscores, and begin with a"
            + " letter or digit";

    public static boolean isName(String text) {
        return NAME.matcher(text).matches();
    }
}
