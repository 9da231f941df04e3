package offtape.cli.command;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands below the first word, by name and in the order of the help. Reading all their
 * options takes longer than most answers, so a line gets only what its words can lead to.
 */
final class Subcommands {

    private static final Set<String> HELP = Set.of("-h", "--help");
    private static final Set<String> VERSION = Set.of("-V", "--version");

    private static final Map<String, Class<?>> ALL = all();

    private Subcommands() {}

    private static Map<String, Class<?>> all() {
        Map<String, Class<?>> all = new LinkedHashMap<>();
        all.put("demo", DemoCommand.class);
        all.put("prepare", PrepareCommand.class);
        all.put("devices", DevicesCommand.class);
        all.put("lineup", LineupCommand.class);
        all.put("capture", CaptureCommand.class);
        all.put("erasure", ErasureCommand.class);
        all.put("measure", MeasureCommand.class);
        all.put("speed", SpeedCommand.class);
        all.put("tones", TonesCommand.class);
        all.put("compare", CompareCommand.class);
        all.put("history", HistoryCommand.class);
        all.put("tables", TablesCommand.class);
        all.put("faults", FaultsCommand.class);
        all.put("correct", CorrectCommand.class);
        all.put("preview", PreviewCommand.class);
        all.put("transfer", TransferCommand.class);
        all.put("realign", RealignCommand.class);
        all.put("listen", ListenCommand.class);
        all.put("simulate", SimulateCommand.class);
        all.put("completion", CompletionCommand.class);
        return Collections.unmodifiableMap(all);
    }

    /**
     * Adds the commands that the words can lead to; all of them if there are no words.
     *
     * @param words what follows {@code offtape}
     */
    static void addTo(CommandLine line, String... words) {
        if (words.length > 0 && ALL.containsKey(words[0])) {
            line.addSubcommand(words[0], ALL.get(words[0]));
        } else if (words.length == 1 && HELP.contains(words[0])) {
            ALL.forEach((name, type) -> line.addSubcommand(name, outline(type)));
        } else if (words.length != 1 || !VERSION.contains(words[0])) {
            ALL.forEach(line::addSubcommand);
        }
    }

    /** A command with its description alone, which is all that the help of the whole shows. */
    private static CommandSpec outline(Class<?> type) {
        CommandSpec outline = CommandSpec.create();
        outline.usageMessage().description(type.getAnnotation(Command.class).description());
        return outline;
    }
}
