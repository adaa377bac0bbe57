package sledwright.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the jar was built as. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        return new String[] {"sledwright " + built()};
    }

    static String built() {
        String built = Version.class.getPackage().getImplementationVersion();
        return built == null ? "(not from a jar)" : built;
    }
}
