package offtape.report.measure.speed;

import java.util.OptionalDouble;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.Speed;

/** Speed from a recording that holds nothing but a steady tone, perhaps with a little around it. */
public final class BareTone {

    private static final double MARGIN_S = 0.2;

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
        ToneSearch search = ToneSearch.in(recording, fromSeconds, toSeconds);
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
        return SpeedMeasure.of(stream, choice.notes());
    }
}
