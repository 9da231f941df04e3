package offtape.dist;

import java.nio.file.Path;
import java.util.List;

/** Java with the modules that Offtape uses and no others. */
final class Runtime {

    /** What no class names: letters of other alphabets on terminals, numbers of other languages. */
    private static final String ASKED_FOR_BY_NAME = "jdk.charsets,jdk.localedata";

    private Runtime() {}

    /**
     * Links it.
     *
     * @param module the module of Offtape
     * @param folder where it comes to lie
     * @param options with which its Java starts
     */
    static void link(Path module, Path folder, List<String> options) {
        Command.tool(
                "jlink",
                List.of(
                        "--module-path",
                        module.toString(),
                        "--add-modules",
                        OneModule.NAME + "," + ASKED_FOR_BY_NAME,
                        "--include-locales",
                        "en,de",
                        "--strip-debug",
                        "--compress=2",
                        "--no-header-files",
                        "--no-man-pages",
                        // it writes the same classes in another order each time
                        "--disable-plugin",
                        "generate-jli-classes",
                        "--add-options",
                        String.join(" ", options),
                        "--output",
                        folder.toString()));
    }
}
