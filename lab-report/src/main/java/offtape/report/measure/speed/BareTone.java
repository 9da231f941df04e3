package offtape.report.measure.speed;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.measure.tone.FoundTone;
import offtape.report.measure.tone.ToneRange;
import offtape.report.measure.tone.ToneSearch;
import offtape.report.result.ScrapeReading;
import offtape.report.result.Speed;

/** Speed from a recording that holds nothing but a steady tone, perhaps with a little around it. */
public final class BareTone {

    private static final Sentences SAID = Sentences.near(BareTone.class);

    private static final double MARGIN_S = 0.2;

    /** Short blocks, so that a tone is followed into its fade and out of it. */
    private static final ToneRange FOR_SPEED =
            new ToneRange(0.1, 280, 13_000, 0, Double.POSITIVE_INFINITY, 0.6, 0.05, 1, -80, 0);

    private BareTone() {}

    /**
     * Measures the longest unbroken stretch of a steady tone: of the one near the frequency that is
     * named, else of a tone for wow and flutter, else of any usual test tone. Memory does not grow
     * with the recording.
     *
     * @param nominalHz the frequency the tone should have, or empty to take the usual test tone
     *     that is nearest
     * @param fromSeconds where to begin in the recording
     * @param toSeconds where to stop at the latest
     * @throws UnusableInputException if there is no steady tone of five seconds, or it is near no
     *     usual test tone and no frequency was given, or another tone sounds along close by
     */
    public static Speed measure(
            AudioSource recording, OptionalDouble nominalHz, double fromSeconds, double toSeconds) {
        ToneSearch search = ToneSearch.in(recording, FOR_SPEED, fromSeconds, toSeconds);
        ToneChoice choice = ToneChoice.from(search, nominalHz, recording.name());
        FoundTone tone = choice.tone();
        ToneStream stream =
                ToneStream.of(
                        recording,
                        tone.fromSeconds() + MARGIN_S,
                        tone.toSeconds() - MARGIN_S,
                        choice.nominalHz(),
                        tone.frequencyHz());
        if (stream == null) {
            throw choice.noTone();
        }
        return measured(stream, choice.notes());
    }

    private static Speed measured(ToneStream stream, List<String> notes) {
        CompletableFuture<ScrapeReading> scrape =
                Background.start(() -> ScrapeFlutter.of(stream, null));
        return SpeedMeasure.of(stream, notes).withScrape(Background.result(scrape));
    }

    /**
     * Measures a tone whose place and frequency are known.
     *
     * @param fromSeconds where it begins in the recording
     * @param toSeconds where it ends; five seconds or more later
     * @param nominalHz the frequency it should have
     * @param heardHz the frequency it has, within 2 %
     */
    public static Speed at(
            AudioSource recording,
            double fromSeconds,
            double toSeconds,
            double nominalHz,
            double heardHz) {
        ToneStream stream =
                ToneStream.of(
                        recording,
                        fromSeconds + MARGIN_S,
                        toSeconds - MARGIN_S,
                        nominalHz,
                        heardHz);
        return stream == null ? Speed.unknown(SAID.say("unreadable")) : measured(stream, List.of());
    }
}
