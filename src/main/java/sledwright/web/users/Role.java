package sledwright.web.users;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What somebody does in the shop. */
public enum Role {
    SALES, PURCHASING, BENCH, OWNER;

    /** As files and options have it. */
    public static Optional<Role> named(String word) {
        return Arrays.stream(values()).filter(role -> role.toString().equals(word)).findFirst();
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(Role::toString).toList();
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
