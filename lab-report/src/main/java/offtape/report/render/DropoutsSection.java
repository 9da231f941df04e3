package offtape.report.render;

import java.util.Comparator;
import java.util.List;
import offtape.report.result.Dropout;
import offtape.report.result.DropoutSummary;
import offtape.report.result.Results;

/**
 * Where the sound broke off for a moment.
 *
 * @param words of the reader's language
 */
record DropoutsSection(Wording words) {

    private static final int SHOWN = 24;

    /** The section. */
    Section of(Results results) {
        List<Dropout> dropouts = results.dropouts();
        Markup body = Section.paragraph(words, words.say("channels.dropouts-intro"));
        body.add(Section.paragraph(words, searched(results.dropoutSummary(), dropouts.isEmpty())));
        if (dropouts.isEmpty()) {
            return new Section("dropouts", words.say("channels.dropouts-heading"), body);
        }
        body.add(Section.paragraph(words, summary(dropouts)));
        body.add(table(dropouts).open());
        return new Section("dropouts", words.say("channels.dropouts-heading"), body);
    }

    /** How much was searched, and how often something was found. */
    private String searched(DropoutSummary summary, boolean none) {
        if (summary == null) {
            return words.say(
                    none ? "channels.dropouts-none-listed" : "channels.dropouts-search-unknown");
        }
        if (summary.searchedSeconds() == 0) {
            return words.told(summary.perMinute().reason());
        }
        String seconds = words.decimal(summary.searchedSeconds(), 0);
        return none
                ? words.say("channels.dropouts-none", seconds)
                : words.say(
                        "channels.dropouts-rate",
                        seconds,
                        words.decimal(summary.perMinute().value(), 1),
                        words.decimal(summary.perMinute().uncertainty(), 1));
    }

    private String summary(List<Dropout> dropouts) {
        Dropout worst = dropouts.stream().max(Comparator.comparingDouble(Dropout::depthDb)).get();
        String depth = words.decimal(worst.depthDb(), 1);
        String length = words.decimal(worst.milliseconds(), 0);
        String channel = words.channel(worst.channel());
        String at = words.decimal(worst.atSeconds(), 2);
        if (dropouts.size() == 1) {
            return words.say("channels.dropouts-one", depth, length, channel, at);
        }
        String several =
                words.say("channels.dropouts-several", dropouts.size(), depth, length, channel, at);
        return dropouts.size() > SHOWN
                ? several + " " + words.say("channels.dropouts-shown", SHOWN)
                : several;
    }

    private DataTable table(List<Dropout> dropouts) {
        List<List<String>> rows =
                dropouts.stream()
                        .sorted(Comparator.comparingDouble(Dropout::depthDb).reversed())
                        .limit(SHOWN)
                        .sorted(Comparator.comparingDouble(Dropout::atSeconds))
                        .map(
                                d ->
                                        List.of(
                                                words.decimal(d.atSeconds(), 2),
                                                words.sentence(words.channel(d.channel())),
                                                words.say(
                                                        d.common()
                                                                ? "channels.yes"
                                                                : "channels.no"),
                                                words.decimal(d.milliseconds(), 0),
                                                words.decimal(d.depthDb(), 1)))
                        .toList();
        return new DataTable(
                words.say("channels.dropouts-table"),
                List.of(
                        words.say("channels.head-at"),
                        words.say("channels.head-channel"),
                        words.say("channels.head-both"),
                        words.say("channels.head-length"),
                        words.say("channels.head-depth")),
                rows);
    }
}
