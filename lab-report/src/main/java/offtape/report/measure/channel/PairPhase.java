package offtape.report.measure.channel;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.Complex;

/**
 * The phase of the left channel against the right while a steady tone sounds on both. What both
 * have in common, wow and flutter, is not in it: a wavelength on tape is as long however fast it
 * passes, so a head that stands askew shows one steady phase.
 *
 * @param radians positive if right is late, without jumps, evenly sampled
 * @param rateHz samples a second
 * @param firstSeconds time of the first sample in the recording
 * @param toneHz mean frequency of the tone in the recording
 */
record PairPhase(double[] radians, double rateHz, double firstSeconds, double toneHz) {

    private static final double RATE_HZ = 1000;
    private static final double PASS_HZ = 220;
    private static final double MARGIN_S = 0.12;

    /** Where a channel is weaker than this share of its usual power its phase is bridged. */
    private static final double LOST = 0.5;

    /** So long before and after, too: the filter rings there. */
    private static final double RINGING_S = 0.012;

    /** Follows a tone, the leak taken out; nothing if it is not there on both channels. */
    static Optional<PairPhase> of(ProgrammeReturn ret, Cue.Tone tone, Leakage leakage) {
        double hz = tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames());
        double pass = Math.min(PASS_HZ, 0.2 * hz);
        int rate = ret.recording().sampleRateHz();
        if (hz + 2 * pass > rate / 2.0) {
            return Optional.empty();
        }
        Downconverter converter = Downconverter.of(pass, 2 * pass, rate, RATE_HZ);
        ProgrammeReturn.Span span = ret.span(tone.startFrame(), tone.frames(), MARGIN_S);
        List<Baseband> bases =
                converter.convert(ret.recording(), span.from(), span.to(), PhaseLaw.steady(hz));
        Baseband left = bases.get(0);
        Baseband right = bases.get(1);
        if (left.size() < RATE_HZ) {
            return Optional.empty();
        }
        boolean[] lost = lost(left, right);
        double[] phase = new double[left.size()];
        double previous = Double.NaN;
        for (int k = 0; k < phase.length; k++) {
            Complex l = new Complex(left.re()[k], left.im()[k]);
            Complex r = new Complex(right.re()[k], right.im()[k]);
            double p =
                    leakage.unmixedAmplitude(0, l, r, tone.frequencyHz())
                            .times(
                                    leakage.unmixedAmplitude(1, r, l, tone.frequencyHz())
                                            .conjugate())
                            .phase();
            if (!lost[k]) {
                double turns =
                        Double.isNaN(previous) ? 0 : Math.rint((p - previous) / (2 * Math.PI));
                previous = p - 2 * Math.PI * turns;
            }
            phase[k] = previous;
        }
        return bridged(phase, lost)
                ? Optional.of(new PairPhase(phase, left.rateHz(), left.firstSeconds(), hz))
                : Optional.empty();
    }

    private static boolean[] lost(Baseband left, Baseband right) {
        double leftUsual = usualPower(left);
        double rightUsual = usualPower(right);
        boolean[] lost = new boolean[left.size()];
        int reach = (int) Math.ceil(RINGING_S * left.rateHz());
        int until = -1;
        for (int k = 0; k < lost.length; k++) {
            boolean heard = left.power(k) > LOST * leftUsual && right.power(k) > LOST * rightUsual;
            if (!heard) {
                until = k + reach;
                Arrays.fill(lost, Math.max(0, k - reach), k, true);
            }
            lost[k] = k <= until;
        }
        return lost;
    }

    private static double usualPower(Baseband base) {
        double[] power = new double[base.size()];
        for (int k = 0; k < power.length; k++) {
            power[k] = base.power(k);
        }
        Arrays.sort(power);
        return power[power.length / 2];
    }

    /** Lays straight lines over what was lost; false if more than a tenth was. */
    private static boolean bridged(double[] phase, boolean[] lost) {
        int good = -1;
        int bridged = 0;
        for (int k = 0; k < phase.length; k++) {
            if (lost[k]) {
                continue;
            }
            for (int i = good + 1; i < k; i++) {
                double from = good < 0 ? phase[k] : phase[good];
                phase[i] = from + (phase[k] - from) * (i - good) / (k - good);
                bridged++;
            }
            good = k;
        }
        return good >= 0 && bridged + (phase.length - 1 - good) < phase.length / 10;
    }
}
