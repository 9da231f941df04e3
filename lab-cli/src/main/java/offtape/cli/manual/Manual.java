package offtape.cli.manual;

import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** The manual: a page for the command itself and one for each below it. */
public final class Manual {

    private Manual() {}

    /**
     * All pages, by their places below the folder of what is installed.
     *
     * @param root the command with all below it
     * @param date day of the software, such as 2026-01-01
     * @param software name and version
     */
    public static Map<String, String> pages(CommandSpec root, String date, String software) {
        Map<String, String> pages = new TreeMap<>();
        pages.put(place(root), ManualPage.of(root, date, software));
        for (CommandLine line : root.subcommands().values()) {
            CommandSpec command = line.getCommandSpec();
            pages.put(place(command), ManualPage.of(command, date, software));
        }
        return pages;
    }

    private static String place(CommandSpec command) {
        return "share/man/man1/" + ManualPage.name(command) + ".1";
    }
}
