package offtape.cli.manual;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The completion of zsh, by its {@code _arguments}. The script works as a file in the shell's path
 * of functions and when it is read with {@code source}.
 */
final class ZshCompletion {

    private ZshCompletion() {}

    /** The script. */
    static String of(CommandSpec root) {
        String name = root.name();
        StringBuilder out = new StringBuilder();
        out.append("#compdef ").append(name).append("\n\n_").append(name).append("() {\n");
        out.append("  local curcontext=\"$curcontext\" state line ret=1\n");
        out.append("  local -a commands\n");
        List<String> top = options(root);
        top.add(quoted("1:command:->command"));
        top.add(quoted("*::argument:->argument"));
        out.append(arguments("  ", "-C", top)).append(" && ret=0\n");
        out.append("  case $state in\n    command)\n      commands=(\n");
        root.subcommands().forEach((word, line) -> out.append(command(word, line)));
        out.append("      )\n      _describe -t commands command commands && ret=0\n      ;;\n");
        out.append("    argument)\n      case $words[1] in\n");
        for (Map.Entry<String, CommandLine> entry : root.subcommands().entrySet()) {
            CommandSpec command = entry.getValue().getCommandSpec();
            List<String> all = options(command);
            command.positionalParameters().forEach(p -> all.add(positional(p)));
            out.append("        ").append(entry.getKey()).append(")\n");
            out.append(arguments("          ", "-s", all)).append(" && ret=0\n          ;;\n");
        }
        out.append("      esac\n      ;;\n  esac\n  return ret\n}\n\n");
        out.append("if [ \"${funcstack[1]-}\" = _").append(name).append(" ]; then\n");
        out.append("  _").append(name).append(" \"$@\"\nelse\n");
        out.append("  compdef _").append(name).append(' ').append(name).append("\nfi\n");
        return out.toString();
    }

    private static String command(String word, CommandLine line) {
        String[] description = line.getCommandSpec().usageMessage().description();
        return "        " + quoted(word + ":" + Summary.of(description).replace(":", "\\:")) + "\n";
    }

    private static String arguments(String indent, String style, List<String> specifications) {
        return specifications.stream()
                .collect(
                        Collectors.joining(
                                " \\\n" + indent + "  ",
                                indent + "_arguments " + style + " \\\n" + indent + "  ",
                                ""));
    }

    private static List<String> options(CommandSpec command) {
        List<String> all = new ArrayList<>();
        for (OptionSpec option : command.options()) {
            if (!option.hidden()) {
                for (String name : option.names()) {
                    all.add(option(option, name));
                }
            }
        }
        return all;
    }

    private static String option(OptionSpec option, String name) {
        boolean value = option.arity().max() > 0;
        String others = String.join(" ", option.names());
        String repeated = option.isMultiValue() ? "*" : "(" + others + ")";
        String alone = option.usageHelp() || option.versionHelp() ? "(- *)" : repeated;
        String assigned = value && name.startsWith("--") ? "=" : "";
        return quoted(
                alone
                        + name
                        + assigned
                        + "["
                        + inert(Summary.of(option.description()))
                        + "]"
                        + (value ? ":" + inert(option.paramLabel()) + ":" + action(option) : ""));
    }

    private static String positional(PositionalParamSpec parameter) {
        int max = parameter.index().max();
        String place =
                parameter.isMultiValue() || max == Integer.MAX_VALUE
                        ? "*"
                        : Integer.toString(parameter.index().min() + 1);
        return quoted(place + ":" + inert(parameter.paramLabel()) + ":" + action(parameter));
    }

    private static String action(ArgSpec argument) {
        List<String> candidates = candidates(argument);
        if (!candidates.isEmpty()) {
            return "(" + String.join(" ", candidates) + ")";
        }
        boolean file = argument.type() == Path.class || argument.auxiliaryTypes()[0] == Path.class;
        return file ? "_files" : " ";
    }

    private static List<String> candidates(ArgSpec argument) {
        Iterable<String> named = argument.completionCandidates();
        return named == null
                ? List.of()
                : StreamSupport.stream(named.spliterator(), false).toList();
    }

    /** Within brackets and between colons. */
    private static String inert(String text) {
        return text.replaceAll("([\\\\\\[\\]:])", "\\\\$1");
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "'\\''") + "'";
    }
}
