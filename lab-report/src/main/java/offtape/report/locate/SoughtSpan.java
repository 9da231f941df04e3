package offtape.report.locate;

import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.SincInterpolator;

/**
 * A stretch of the programme that is sought, its channels added.
 *
 * @param seconds its length
 * @param mono the programme there and somewhat around it
 * @param centre the middle of the stretch in it, in samples
 * @param rateHz its sample rate
 */
record SoughtSpan(double seconds, double[] mono, double centre, double rateHz) {

    private static final int MARGIN = 64;

    static SoughtSpan of(AudioSource programme, double from, double seconds) {
        double rateHz = programme.sampleRateHz();
        long first = Math.round(from * rateHz) - MARGIN;
        double[][] x = programme.read(first, (int) Math.ceil(seconds * rateHz) + 2 * MARGIN);
        double[] mono = x[0];
        for (int c = 1; c < x.length; c++) {
            for (int i = 0; i < mono.length; i++) {
                mono[i] += x[c][i];
            }
        }
        return new SoughtSpan(seconds, mono, (from + seconds / 2) * rateHz - first, rateHz);
    }

    /** Its values between samples, band-limited. */
    DoubleUnaryOperator exact() {
        return place -> SincInterpolator.at(mono, place);
    }

    /**
     * The stretch as a recording should hold it, its middle on the middle sample.
     *
     * @param at values of the stretch between samples
     * @param stretch recording time over programme time
     * @param recordingHz sample rate of the recording
     */
    double[] template(DoubleUnaryOperator at, double stretch, double recordingHz) {
        int half = (int) (seconds * stretch * recordingHz / 2);
        double[] out = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            double offset = i * rateHz / (recordingHz * stretch);
            out[i + half] = at.applyAsDouble(centre + offset);
        }
        return out;
    }
}
