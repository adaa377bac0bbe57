package sledwright.web.users;

import com.password4j.Argon2Function;
import com.password4j.BadParametersException;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.util.regex.Pattern;

/**
 * Hashes of passwords: Argon2id (RFC 9106), in the form {@code $argon2id$v=19$m=...,t=...,p=...$salt$hash}. Nothing of the library is
 * loaded before the first of them.
 */
public final class PasswordHash {

    /** Fewer letters can be tried one after the other by whoever has the file. */
    public static final int SHORTEST = 12;
    public static final int LONGEST = 256;

    /** 19 MiB, two passes, one lane: a row of the OWASP Password Storage Cheat Sheet for Argon2id (from memory). */
    private static final int KIB = 19_456;
    private static final int PASSES = 2;
    private static final int LANES = 1;
    private static final int BYTES = 32;
    private static final int SALT_BYTES = 16;
    /** One that asks for more memory or time than this would let a file stop the server. */
    private static final Pattern FORM = Pattern.compile(
            "\\$argon2id\\$v=19\\$m=([0-9]{4,6}),t=([0-9]{1,2}),p=([1-4])\\$[A-Za-z0-9+/]{11,86}\\$[A-Za-z0-9+/]{22,86}");

    private PasswordHash() {
    }

    public static String of(String password) {
        return Password.hash(password).addRandomSalt(SALT_BYTES)
                .with(Argon2Function.getInstance(KIB, PASSES, LANES, BYTES, Argon2.ID)).getResult();
    }

    public static boolean isHash(String text) {
        return FORM.matcher(text).matches();
    }

    /** Whether a password is the one that was hashed. */
    public static boolean matches(String password, String hash) {
        try {
            return password.length() <= LONGEST && Password.check(password, hash).with(Argon2Function.getInstanceFromHash(hash));
        } catch (BadParametersException garbled) {
            return false;
        }
    }
}
