package sledwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the options that commands share, which know the terminal at which the command is run. */
record TerminalFactory(Terminal terminal) implements IFactory {

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (type == SharedOptions.class) {
            return type.cast(new SharedOptions(terminal));
        }
        return type == UsersOptions.class ? type.cast(new UsersOptions(terminal)) : CommandLine.defaultFactory().create(type);
    }
}
