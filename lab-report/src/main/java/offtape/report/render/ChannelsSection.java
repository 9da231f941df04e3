package offtape.report.render;

import java.util.List;
import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Subject;
import offtape.report.result.Channels;
import offtape.report.result.Results;
import offtape.report.result.Timing;

/**
 * How the channels compare, and how long the sound was on its way.
 *
 * @param words of the reader's language
 */
record ChannelsSection(Wording words) {

    /** The section. */
    Section of(Results results, LimitLines limits) {
        Channels channels = Find.channels(results);
        Markup body =
                Section.paragraph(
                        words,
                        words.say(
                                Subject.of(results)
                                        .words("channels.intro", "channels.intro-interface")));
        ChannelCharts charts = new ChannelCharts(words);
        body.add(channels(channels, results.session().tracks()).open());
        if (ChannelCharts.hasTrace(channels)) {
            String caption = traceCaption(channels, Subject.of(results));
            Chart chart = charts.trace(channels, limits, caption);
            body.add(Section.figure(words, caption, List.of(chart)));
            body.add(ChartTable.of(words, chart).folded(words));
        }
        if (ChannelCharts.hasCrosstalk(channels)) {
            String caption = words.say("channels.crosstalk-caption");
            body.add(
                    Section.figure(
                            words, caption, List.of(charts.crosstalk(channels, limits, caption))));
            body.add(charts.crosstalkTable(channels).folded(words));
        }
        if (results.timing() != null) {
            body.add(timing(results.timing()).open());
        }
        return new Section("channels", words.say("channels.heading"), body);
    }

    private String traceCaption(Channels c, Subject subject) {
        String what = words.say("channels.trace-caption") + " ";
        Quantity rms = Find.figure(c.interchannelDelayWander());
        String wanders =
                subject.words("channels.trace-wanders", "channels.trace-wanders-interface");
        return what
                + (rms.isKnown()
                        ? words.say(wanders, words.full(rms, false))
                        : words.told(rms.reason()));
    }

    private DataTable channels(Channels c, TrackSpacing tracks) {
        String azimuth =
                tracks == null
                        ? words.say("channels.azimuth")
                        : words.say("channels.azimuth-tracks", words.significant(tracks.mm(), 3));
        return new DataTable(
                words.say("channels.table"),
                heads(),
                List.of(
                        row("channels.balance", c.balance(), true),
                        row("channels.crosstalk-left-right", c.crosstalkLeftToRight(), true),
                        row("channels.crosstalk-right-left", c.crosstalkRightToLeft(), true),
                        row("channels.delay", c.interchannelDelay(), true),
                        row("channels.delay-wander", c.interchannelDelayWander(), false),
                        row(
                                "channels.delay-wander-peak",
                                c.interchannelDelayWanderPeakToPeak(),
                                false),
                        row("channels.response-delay", c.responseDelay(), true),
                        row("channels.phase-residual", c.phaseResidual(), false),
                        List.of(azimuth, words.full(Find.figure(c.azimuth()), true)),
                        row("channels.azimuth-wander", c.azimuthWander(), false),
                        row("channels.mono-loss", c.monoLossAt10kHz(), false)));
    }

    private DataTable timing(Timing t) {
        return new DataTable(
                words.say("channels.time"),
                heads(),
                List.of(
                        row("channels.programme-delay", t.delay(), false),
                        row("channels.head-delay", t.headDelay(), false),
                        row("channels.head-spacing", t.headSpacing(), false),
                        List.of(words.say("channels.polarity"), polarity(t.polarity())),
                        row("channels.clock-error", t.recordingClockError(), true)));
    }

    private String polarity(String polarity) {
        if (!Wording.isGiven(polarity)) {
            return words.say("channels.polarity-unknown");
        }
        return switch (polarity) {
            case "normal", "inverted" -> words.say("channels.polarity-" + polarity);
            default -> polarity;
        };
    }

    private List<String> heads() {
        return List.of(words.say("channels.head-figure"), words.say("channels.head-value"));
    }

    private List<String> row(String key, Quantity figure, boolean signed) {
        return List.of(words.say(key), words.full(Find.figure(figure), signed));
    }
}
