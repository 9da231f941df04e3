package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import offtape.core.filter.FirDesign;
import offtape.core.text.Sentences;
import offtape.report.apply.correct.CorrectionWish;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is wanted of the filter and the equaliser. */
final class FilterOptions {

    private static final Sentences SAID = Sentences.near(FilterOptions.class);

    private static final double MOST_DB = 40;
    private static final int MOST_BANDS = 10;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--target",
            paramLabel = "FILE",
            description =
                    "The response wanted, a CSV file of frequency in Hz and level in dB; without it a"
                            + " flat one.")
    private Path target;

    @Option(
            names = "--rate",
            paramLabel = "HZ",
            split = ",",
            description =
                    "Sample rates to write the filter for, 8000 to 384000 (default: that of the"
                            + " session's recording).")
    private List<Integer> rates = List.of();

    @Option(
            names = "--most-boost",
            paramLabel = "DB",
            description = "Never boost by more, 0 to 40 (default: 12).")
    private double mostBoostDb = CorrectionWish.USUAL_LIMIT_DB;

    @Option(
            names = "--most-cut",
            paramLabel = "DB",
            description = "Never cut by more, 0 to 40 (default: 12).")
    private double mostCutDb = CorrectionWish.USUAL_LIMIT_DB;

    @Option(
            names = "--bands",
            paramLabel = "N",
            description = "Bands of the parametric equaliser, 1 to 10 (default: 4).")
    private int bands = CorrectionWish.USUAL_BANDS;

    @Option(
            names = "--same-filter",
            description =
                    "One filter for both channels, for their mean: for a plug-in that takes one"
                            + " response, or channels that hardly differ. Without it each gets its own,"
                            + " which is nearer the target.")
    private boolean sameFilter;

    /** The file with the response wanted, or null. */
    Path target() {
        return target;
    }

    /** What is wanted, within its limits. */
    CorrectionWish wish(List<Double> k3Percent) {
        for (int rate : rates) {
            require(
                    rate >= FirDesign.LOWEST_RATE_HZ && rate <= FirDesign.HIGHEST_RATE_HZ,
                    SAID.say("filter-rate", rate));
        }
        require(mostBoostDb >= 0 && mostBoostDb <= MOST_DB, SAID.say("most-boost"));
        require(mostCutDb >= 0 && mostCutDb <= MOST_DB, SAID.say("most-cut"));
        require(bands >= 1 && bands <= MOST_BANDS, SAID.say("bands"));
        return new CorrectionWish(
                target,
                new ArrayList<>(new TreeSet<>(rates)),
                mostBoostDb,
                mostCutDb,
                bands,
                sameFilter,
                k3Percent);
    }

    private void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new ParameterException(spec.commandLine(), otherwise);
        }
    }
}
