package offtape.cli.command;

import java.lang.module.ModuleDescriptor;
import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** Name and version of the software. */
final class Version implements IVersionProvider {

    /** As it stands in results, such as {@code Offtape 0.1.0}. */
    static String text() {
        return "Offtape " + number().orElse("(unpackaged)");
    }

    /** From the manifest of the jar, or of the module where all lies in one. */
    private static Optional<String> number() {
        ModuleDescriptor module = Version.class.getModule().getDescriptor();
        return module == null
                ? Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
                : module.rawVersion();
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}
