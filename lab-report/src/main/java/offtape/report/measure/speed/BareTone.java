package offtape.report.measure.speed;

import java.util.Locale;
import java.util.OptionalDouble;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.Speed;

/** Speed from a recording that holds nothing but a steady tone, perhaps with a little around it. */
public final class BareTone {

    /** The tones in use: wow and flutter (IEC, and older practice), level, highs, slow tape. */
    private static final double[] USUAL_HZ = {3150, 3000, 1000, 10_000, 315, 333, 400, 440, 8000};

    private static final double NEAR = 0.06;

    /** How far a tone may be from the frequency that was named, as the log of their ratio. */
    private static final double SAME_TONE = 0.2;

    private static final double MARGIN_S = 0.2;
    private static final double SHORTEST_S = 5;

    private BareTone() {}

    /**
     * Measures the longest steady tone of a recording, or the longest one near the frequency that
     * is named.
     *
     * @param nominalHz the frequency the tone should have, or empty to take the usual test tone
     *     that is nearest
     * @throws UnusableInputException if there is no steady tone of five seconds, or it is near no
     *     usual test tone and no frequency was given
     */
    public static Speed measure(AudioSource recording, OptionalDouble nominalHz) {
        ToneSearch.Found tone =
                ToneSearch.longest(recording, hz -> isMeant(hz, nominalHz))
                        .filter(t -> t.seconds() >= SHORTEST_S)
                        .orElseThrow(() -> noTone(recording, nominalHz));
        double nominal = nominalHz.orElseGet(() -> nearest(tone.frequencyHz(), recording));
        double from = tone.fromSeconds() + MARGIN_S;
        double to = tone.toSeconds() - MARGIN_S;
        SpeedSignal signal = SpeedSignal.of(recording, from, to, nominal, tone.frequencyHz());
        if (signal == null) {
            throw noTone(recording, nominalHz);
        }
        return new SpeedMeasure(signal).measure();
    }

    private static boolean isMeant(double hz, OptionalDouble nominalHz) {
        return nominalHz.isEmpty() || Math.abs(Math.log(hz / nominalHz.getAsDouble())) < SAME_TONE;
    }

    private static UnusableInputException noTone(AudioSource recording, OptionalDouble nominalHz) {
        String where =
                nominalHz.isEmpty()
                        ? "between 300 Hz and 12 kHz"
                        : String.format(Locale.ROOT, "near %.0f Hz", nominalHz.getAsDouble());
        return new UnusableInputException(
                "No steady tone of five seconds or more "
                        + where
                        + " was found in "
                        + recording.name()
                        + ". Record the tone alone, half a minute or more, without speech or music over"
                        + " it.");
    }

    private static double nearest(double hz, AudioSource recording) {
        double best = USUAL_HZ[0];
        for (double usual : USUAL_HZ) {
            best = Math.abs(Math.log(hz / usual)) < Math.abs(Math.log(hz / best)) ? usual : best;
        }
        if (Math.abs(Math.log(hz / best)) > NEAR) {
            throw new UnusableInputException(
                    String.format(
                            Locale.ROOT,
                            "The tone in %s has %.1f Hz, which is near no usual test tone. Say with"
                                    + " --frequency what it should have.",
                            recording.name(),
                            hz));
        }
        return best;
    }
}
