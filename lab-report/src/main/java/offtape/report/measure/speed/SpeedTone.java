package offtape.report.measure.speed;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.noise.NoiseDensities;

/** Speed from the tone that a programme holds for it. */
public final class SpeedTone {

    private static final Sentences SAID = Sentences.near(SpeedTone.class);

    private static final double MARGIN_S = 0.15;
    private static final double SHORTEST_S = 2;
    private static final double LOWEST_HZ = 300;
    private static final double HIGHEST_HZ = 12_000;

    private SpeedTone() {}

    /** All readings of speed from the longest steady tone on both channels. */
    public static ToneReading measure(ProgrammeReturn ret) {
        Optional<Cue.Tone> tone = longest(ret);
        if (tone.isEmpty()) {
            return ToneReading.unknown(
                    ret.whyMissing(
                            Cue.Tone.class,
                            t -> t.channels() == ChannelSet.BOTH,
                            SAID.say("no-tone")));
        }
        ToneStream stream = stream(ret, tone.get());
        return stream == null
                ? ToneReading.unknown(SAID.say("not-heard"))
                : SpeedMeasure.reading(stream, List.of())
                        .withScrape(
                                ScrapeFlutter.of(stream, NoiseDensities.span(ret).orElse(null)));
    }

    /** The deviation itself over the same tone; empty if there is none or it was not heard. */
    public static Optional<ToneCourse> course(ProgrammeReturn ret) {
        return longest(ret).map(tone -> stream(ret, tone)).map(ToneCourse::of);
    }

    private static Optional<Cue.Tone> longest(ProgrammeReturn ret) {
        return ret.cues(Cue.Tone.class).stream()
                .filter(t -> t.channels() == ChannelSet.BOTH)
                .filter(t -> t.frequencyHz() >= LOWEST_HZ && t.frequencyHz() <= HIGHEST_HZ)
                .filter(t -> ret.sheet().seconds(t.frames()) >= SHORTEST_S)
                .max(Comparator.comparingLong(Cue::frames));
    }

    /** The tone as it returns; null if it is not heard. */
    private static ToneStream stream(ProgrammeReturn ret, Cue.Tone t) {
        ProgrammeReturn.Span span = ret.span(t.startFrame(), t.frames(), MARGIN_S);
        double expected = t.frequencyHz() * ret.speedRatio(t.startFrame(), t.frames());
        return ToneStream.of(ret.recording(), span.from(), span.to(), t.frequencyHz(), expected);
    }
}
