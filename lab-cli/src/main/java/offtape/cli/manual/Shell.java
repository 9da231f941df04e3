package offtape.cli.manual;

import java.util.Locale;
import picocli.AutoComplete;
import picocli.CommandLine.Model.CommandSpec;

/** A shell that completes commands, options and names of files when it is told how. */
public enum Shell {
    /** Also for shells that read its completion. */
    BASH("share/bash-completion/completions/offtape") {
        @Override
        public String completion(CommandSpec root) {
            return AutoComplete.bash(root.name(), root.commandLine());
        }
    },
    ZSH("share/zsh/site-functions/_offtape") {
        @Override
        public String completion(CommandSpec root) {
            return ZshCompletion.of(root);
        }
    };

    private final String place;

    Shell(String place) {
        this.place = place;
    }

    /** As it is typed. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Where the shell looks for it, below the folder of what is installed. */
    public String place() {
        return place;
    }

    /**
     * The script that tells the shell how.
     *
     * @param root the command with all below it
     */
    public abstract String completion(CommandSpec root);
}
