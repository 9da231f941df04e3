package offtape.report.render;

import java.util.List;
import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Subject;
import offtape.report.result.Channels;
import offtape.report.result.Results;
import offtape.report.result.Timing;

/** How the channels compare, and how long the sound was on its way. */
final class ChannelsSection {

    private ChannelsSection() {}

    /** The section. */
    static Section of(Results results, LimitLines limits) {
        Channels channels = Find.channels(results);
        Markup body =
                Section.paragraph(
                        Subject.of(results)
                                .words(
                                        "Do left and right belong together? A delay between them is"
                                                + " mostly a head that stands askew (azimuth); it dulls the"
                                                + " sound when the channels are summed to mono.",
                                        "Do left and right belong together? A delay between them dulls"
                                                + " the sound when the channels are summed to mono."));
        body.add(channels(channels, results.session().tracks()).open());
        if (ChannelCharts.hasTrace(channels)) {
            String caption = traceCaption(channels, Subject.of(results));
            Chart chart = ChannelCharts.trace(channels, limits, caption);
            body.add(Section.figure(caption, List.of(chart)));
            body.add(ChartTable.of(chart).folded());
        }
        if (ChannelCharts.hasCrosstalk(channels)) {
            String caption =
                    "How loud a channel hears what sounds on the other alone, against its own level"
                            + " at the same frequency. The thin lines are the floor: what lies lower stays"
                            + " under the noise of this recording.";
            body.add(
                    Section.figure(
                            caption, List.of(ChannelCharts.crosstalk(channels, limits, caption))));
            body.add(ChannelCharts.crosstalkTable(channels).folded());
        }
        if (results.timing() != null) {
            body.add(timing(results.timing()).open());
        }
        return new Section("channels", "Channels and time", body);
    }

    private static String traceCaption(Channels c, Subject subject) {
        String what = "The delay while one steady tone sounds. ";
        Quantity rms = Find.figure(c.interchannelDelayWander());
        return rms.isKnown()
                ? what
                        + "It wanders by "
                        + Numbers.full(rms, false)
                        + " rms about its mean"
                        + subject.words(
                                ": the tape does not run straight over the head (guides, tension, slit"
                                        + " edges).",
                                ".")
                : what + rms.reason();
    }

    private static DataTable channels(Channels c, TrackSpacing tracks) {
        String azimuth =
                tracks == null
                        ? "Azimuth, + right late"
                        : "Azimuth, + right late, tracks "
                                + Numbers.significant(tracks.mm(), 3)
                                + " mm apart";
        return new DataTable(
                "Channels",
                List.of("Figure", "Value"),
                List.of(
                        row("Balance, right re left", c.balance(), true),
                        row("Crosstalk at 1 kHz, left into right", c.crosstalkLeftToRight(), true),
                        row("Crosstalk at 1 kHz, right into left", c.crosstalkRightToLeft(), true),
                        row("Interchannel delay, + right late", c.interchannelDelay(), true),
                        row("Its wander, rms", c.interchannelDelayWander(), false),
                        row(
                                "Its wander, peak to peak",
                                c.interchannelDelayWanderPeakToPeak(),
                                false),
                        row("Delay from unlike responses", c.responseDelay(), true),
                        row("Phase that neither explains, rms", c.phaseResidual(), false),
                        row(azimuth, c.azimuth(), true),
                        row("Wander of the azimuth, rms", c.azimuthWander(), false),
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
