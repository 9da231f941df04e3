package offtape.report.render;

import java.util.Comparator;
import java.util.List;
import offtape.report.result.Dropout;
import offtape.report.result.DropoutSummary;
import offtape.report.result.Results;

/** Where the sound broke off for a moment. */
final class DropoutsSection {

    private static final int SHOWN = 24;

    private DropoutsSection() {}

    /** The section. */
    static Section of(Results results) {
        List<Dropout> dropouts = results.dropouts();
        Markup body =
                Section.paragraph(
                        "Does the sound break off? A dropout is a moment in which the tape lifts"
                                + " from the head or has lost its coating.");
        body.add(Section.paragraph(searched(results.dropoutSummary(), dropouts.isEmpty())));
        if (dropouts.isEmpty()) {
            return new Section("dropouts", "Dropouts", body);
        }
        body.add(Section.paragraph(summary(dropouts)));
        body.add(table(dropouts).open());
        return new Section("dropouts", "Dropouts", body);
    }

    /** How much was searched, and how often something was found. */
    private static String searched(DropoutSummary summary, boolean none) {
        if (summary == null) {
            return none ? "No dropout is listed." : "How much was searched is not known.";
        }
        if (summary.searchedSeconds() == 0) {
            return summary.perMinute().reason();
        }
        String stretch =
                "In "
                        + Numbers.decimal(summary.searchedSeconds(), 0)
                        + " s of steady tone dropouts of 3 dB and 10 ms or more were looked for: ";
        return none
                ? stretch + "there is none."
                : stretch
                        + Numbers.decimal(summary.perMinute().value(), 1)
                        + " places a minute ± "
                        + Numbers.decimal(summary.perMinute().uncertainty(), 1)
                        + ".";
    }

    private static String summary(List<Dropout> dropouts) {
        Dropout worst = dropouts.stream().max(Comparator.comparingDouble(Dropout::depthDb)).get();
        String count = dropouts.size() == 1 ? "One dropout" : dropouts.size() + " dropouts";
        return count
                + (dropouts.size() == 1 ? ", " : "; the deepest, ")
                + Numbers.decimal(worst.depthDb(), 1)
                + " dB for "
                + Numbers.decimal(worst.milliseconds(), 0)
                + " ms, is on the "
                + worst.channel()
                + " channel at "
                + Numbers.decimal(worst.atSeconds(), 2)
                + " s."
                + (dropouts.size() > SHOWN ? " The table lists the " + SHOWN + " deepest." : "");
    }

    private static DataTable table(List<Dropout> dropouts) {
        List<List<String>> rows =
                dropouts.stream()
                        .sorted(Comparator.comparingDouble(Dropout::depthDb).reversed())
                        .limit(SHOWN)
                        .sorted(Comparator.comparingDouble(Dropout::atSeconds))
                        .map(
                                d ->
                                        List.of(
                                                Numbers.decimal(d.atSeconds(), 2),
                                                Words.sentence(d.channel()),
                                                d.common() ? "yes" : "no",
                                                Numbers.decimal(d.milliseconds(), 0),
                                                Numbers.decimal(d.depthDb(), 1)))
                        .toList();
        return new DataTable(
                "Losses of level",
                List.of("At, s", "Channel", "On both", "Length, ms", "Depth, dB"),
                rows);
    }
}
