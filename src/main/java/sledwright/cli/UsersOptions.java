package sledwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Option;
import sledwright.input.Field;
import sledwright.web.users.PasswordHash;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

/** Which file of users is meant, and how a password comes in. */
final class UsersOptions {

    private static final int MOST_BYTES = 4 * PasswordHash.LONGEST + 2;

    private final Terminal terminal;

    @Option(names = "--users", paramLabel = "FILE", required = true, description = "The file of users, as 'serve --users' takes it.")
    private Path file;

    // Read from the bare arguments, since it must count where they cannot be parsed, too.
    @Option(names = "--verbose", description = "Show where in the program a failure happened.")
    private boolean verbose;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    private boolean help;

    UsersOptions(Terminal terminal) {
        this.terminal = terminal;
    }

    /** What the run is connected to. */
    Terminal terminal() {
        return terminal;
    }

    UsersFile file() {
        return new UsersFile(file);
    }

    /** The users of the file, which may not be there yet. */
    Map<String, User> users() {
        return file().exists() ? file().read() : new LinkedHashMap<>();
    }

    /** The user of that name. */
    User user(Map<String, User> users, String name) {
        if (!users.containsKey(name)) {
            throw new UsageException("%s has no user '%s'; it has %s".formatted(file, Field.shown(name),
                    users.isEmpty() ? "none" : String.join(", ", users.keySet())));
        }
        return users.get(name);
    }

    /** Asked for twice at a terminal; otherwise the first line of what is piped in. */
    String password() {
        String password = terminal.interactive().getAsBoolean() && System.console() != null ? typed() : piped();
        if (password.codePointCount(0, password.length()) < PasswordHash.SHORTEST || password.length() > PasswordHash.LONGEST) {
            throw new UsageException("a password must have from %s to %s characters".formatted(PasswordHash.SHORTEST,
                    PasswordHash.LONGEST));
        }
        if (password.isBlank()) {
            throw new UsageException("a password must not be of blanks alone");
        }
        return password;
    }

    private static String typed() {
        return agreed(System.console().readPassword("Password: "), System.console().readPassword("Again: "));
    }

    /** @param again null: the input has ended */
    static String agreed(char[] first, char[] again) {
        if (first == null || again == null || !Arrays.equals(first, again)) {
            throw new UsageException("the two passwords differ");
        }
        return String.valueOf(first);
    }

    private String piped() {
        try {
            ByteArrayOutputStream line = new ByteArrayOutputStream();
            int next = terminal.in().read();
            while (next >= 0 && next != '\n' && line.size() < MOST_BYTES) {
                line.write(next);
                next = terminal.in().read();
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(line.toByteArray())).toString().replaceFirst("\r$", "");
        } catch (IOException garbled) {
            throw new UsageException("the password on standard input cannot be read; it must be UTF-8");
        }
    }
}
