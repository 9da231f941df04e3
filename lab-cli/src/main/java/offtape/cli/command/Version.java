package offtape.cli.command;

import picocli.CommandLine.IVersionProvider;

/** Name and version of the software. */
final class Version implements IVersionProvider {

    /** As it stands in results, such as {@code Offtape 0.1.0}. */
    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return "Offtape " + (version == null ? "(unpackaged)" : version);
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
