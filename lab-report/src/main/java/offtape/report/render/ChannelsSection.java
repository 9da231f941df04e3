package offtape.report.render;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Results;
import offtape.report.result.Timing;

/** How the channels compare, and how long the sound was on its way. */
final class ChannelsSection {

    private ChannelsSection() {}

    /** The section. */
    static Section of(Results results) {
        Markup body =
                Section.paragraph(
                        "Do left and right belong together? A delay between them is mostly a head"
                                + " that stands askew (azimuth); it dulls the sound when the"
                                + " channels are summed to mono.");
        body.add(channels(Find.channels(results)).open());
        if (results.timing() != null) {
            body.add(timing(results.timing()).open());
        }
        return new Section("channels", "Channels and time", body);
    }

    private static DataTable channels(Channels c) {
        return new DataTable(
                "Channels",
                List.of("Figure", "Value"),
                List.of(
                        row("Balance, right re left", c.balance(), true),
                        row("Crosstalk at 1 kHz, left into right", c.crosstalkLeftToRight(), true),
                        row("Crosstalk at 1 kHz, right into left", c.crosstalkRightToLeft(), true),
                        row("Interchannel delay, + right late", c.interchannelDelay(), true),
                        row("Azimuth, + right late", c.azimuth(), true),
                        row("Loss in mono at 10 kHz", c.monoLossAt10kHz(), false)));
    }

    private static DataTable timing(Timing t) {
        String polarity = Words.isGiven(t.polarity()) ? t.polarity() : "unknown";
        return new DataTable(
                "Time",
                List.of("Figure", "Value"),
                List.of(
                        row("Delay, programme to return", t.delay(), false),
                        row("Delay between record and replay head", t.headDelay(), false),
                        row("Distance between record and replay head", t.headSpacing(), false),
                        List.of("Polarity", polarity),
                        row("Difference of the sample clocks", t.recordingClockError(), true)));
    }

    private static List<String> row(String name, Quantity figure, boolean signed) {
        return List.of(name, Numbers.full(Find.figure(figure), signed));
    }
}
