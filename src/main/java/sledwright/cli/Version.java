package sledwright.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the jar was built as. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        String built = Version.class.getPackage().getImplementationVersion();
        return new String[] {"sledwright " + (built == null ? "(not from a jar)" : built)};
    }
}
