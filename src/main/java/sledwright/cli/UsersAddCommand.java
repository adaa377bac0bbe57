package sledwright.cli;

import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;
import sledwright.input.Field;
import sledwright.web.users.PasswordHash;
import sledwright.web.users.Role;
import sledwright.web.users.User;

/** {@code users add NAME}: one more. */
@Command(
        name = "add",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Adds somebody who may use the server. The password is asked for, or is the first line of standard input. The file is"
                + " made where there is none.")
final class UsersAddCommand implements Callable<Integer> {

    /** Reads a role. */
    static final class OfRole implements ITypeConverter<Role> {

        @Override
        public Role convert(String given) {
            return Role.named(given).orElseThrow(() ->
                    new TypeConversionException("'%s' must be one of %s".formatted(given, String.join(", ", Role.words()))));
        }
    }

    @Parameters(paramLabel = "NAME", description = "What they log in as.")
    private String name;

    @Option(names = "--role", paramLabel = "ROLE", required = true, converter = OfRole.class,
            description = "sales, purchasing, bench or owner: what they may do.")
    private Role role;

    @Mixin
    private UsersOptions options;

    @Override
    public Integer call() {
        if (!User.isName(name)) {
            throw new UsageException("the name '%s' %s".formatted(Field.shown(name), User.RIGHT_NAME));
        }
        Map<String, User> users = options.users();
        if (users.containsKey(name)) {
            throw new UsageException("%s has a user '%s' already.\nMaybe give another password with 'users password', or remove it first."
                    .formatted(options.file().path(), name));
        }
        users.put(name, new User(name, role, PasswordHash.of(options.password())));
        options.file().write(users);
        return ExitCode.DONE;
    }
}
