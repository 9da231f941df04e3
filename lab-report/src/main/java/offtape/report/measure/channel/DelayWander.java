package offtape.report.measure.channel;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import offtape.core.dsp.LowPass;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.Leakage;
import offtape.report.result.DelayTrace;

/**
 * How the delay between the channels wanders while a steady tone sounds: the tape does not run
 * straight over the head. Read up to 20 Hz; the share that noise has in it is told from the rates
 * above, where a tape does not skew, and is taken out.
 *
 * @param rms µs about the mean
 * @param peakToPeak µs
 * @param trace the delay over time, null if there is no tone
 */
record DelayWander(Quantity rms, Quantity peakToPeak, DelayTrace trace) {

    private static final Sentences SAID = Sentences.near(DelayWander.class);

    private static final double SHORTEST_S = 4;
    private static final double LOWEST_HZ = 300;
    private static final double HIGHEST_HZ = 12_500;

    private static final double PASS_HZ = 20;
    private static final double STOP_HZ = 40;
    private static final double NOISE_FROM_HZ = 45;
    private static final double NOISE_TO_HZ = 180;
    private static final int TRANSFORM = 1024;
    private static final int FEWEST_BINS = 4;

    /** How even the noise is from here to there, a share of its power. */
    private static final double NOISE_UNCERTAINTY = 0.1;

    /** A median of normal values scatters by so much more than their mean. */
    private static final double MEDIAN_SCATTER = Math.sqrt(Math.PI / 2);

    /** Pieces that overlap by half tell that share of what as many apart would; Welch 1967. */
    private static final double OVERLAPPED = 18.0 / 19;

    /** What filters and rounding may make of a steady phase, µs. */
    private static final double OWN_US = 0.001;

    /** The calibration of µs a radian, a share. */
    private static final double OWN_SHARE = 0.005;

    /** Values of the trace a second. */
    private static final double TRACE_HZ = 20;

    static DelayWander unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new DelayWander(q, q, null);
    }

    /** The same wander about a mean that lies earlier by an interface's own delay. */
    DelayWander earlier(Quantity interfaces) {
        if (trace == null || !interfaces.isKnown()) {
            return this;
        }
        double[] rest =
                Arrays.stream(trace.microseconds()).map(us -> us - interfaces.value()).toArray();
        return new DelayWander(rms, peakToPeak, new DelayTrace(trace.seconds(), rest));
    }

    /**
     * Measures the longest tone on both channels.
     *
     * @param whole the delay over the whole band, which tells which period of the tone is meant
     */
    static DelayWander of(ProgrammeReturn ret, Leakage leakage, InterchannelDelay whole) {
        Optional<PairPhase> phase =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == ChannelSet.BOTH)
                        .filter(t -> t.frequencyHz() >= LOWEST_HZ && t.frequencyHz() <= HIGHEST_HZ)
                        .filter(t -> ret.sheet().seconds(t.frames()) >= SHORTEST_S)
                        .max(Comparator.comparingLong(Cue::frames))
                        .flatMap(t -> PairPhase.of(ret, t, leakage));
        return phase.isEmpty() ? unknown(SAID.say("no-tone-on-both")) : of(phase.get(), whole);
    }

    /** Reads the wander from the phase of a tone. */
    static DelayWander of(PairPhase phase, InterchannelDelay whole) {
        double microseconds = 1e6 / (2 * Math.PI * phase.toneHz());
        LowPass filter = LowPass.design(PASS_HZ, STOP_HZ, 60, phase.rateHz());
        Sway sway = Sway.of(phase, filter);
        Noise beside = Noise.of(phase, sway.mean());
        double noise = beside.density() * filter.noiseBandwidthHz() / 2;
        double values = filter.noiseBandwidthHz() * phase.radians().length / phase.rateHz();
        double doubt = noise * Math.hypot(2 * Math.sqrt(2 / values), beside.share());
        double own = OWN_US / microseconds;
        double excess = sway.power() - noise;
        DelayTrace trace =
                trace(phase, wholePeriods(sway.mean(), phase.toneHz(), whole), microseconds);
        if (!(excess > doubt + own * own)) {
            double limit = Math.sqrt(Math.max(0, excess) + doubt + own * own);
            return hidden(microseconds * limit, trace);
        }
        double rms = Math.sqrt(excess);
        // Noise of so many independent values spreads this far from its lowest to its highest.
        double spread = 2 * Math.sqrt(2 * noise * Math.log(Math.max(2, values)));
        double span = Math.sqrt(Math.max(0, sway.span() * sway.span() - spread * spread));
        return new DelayWander(
                figure(rms, doubt / (2 * rms), microseconds),
                figure(span, spread, microseconds),
                trace);
    }

    /** A figure in radians as one in µs. */
    private static Quantity figure(double radians, double doubt, double microseconds) {
        double own = Math.hypot(OWN_US, OWN_SHARE * radians * microseconds);
        return Quantity.known(microseconds * radians, "µs", Math.hypot(microseconds * doubt, own));
    }

    private static DelayWander hidden(double limitUs, DelayTrace trace) {
        Quantity none = Quantity.unknown(SAID.say("no-wander", Math.ceil(1000 * limitUs) / 1000));
        return new DelayWander(none, none, trace);
    }

    /**
     * What a phase does below 20 Hz.
     *
     * @param mean radians
     * @param power mean square about it
     * @param span from the lowest to the highest
     */
    private record Sway(double mean, double power, double span) {

        static Sway of(PairPhase phase, LowPass filter) {
            int step = Math.max(1, (int) (phase.rateHz() / (5 * STOP_HZ)));
            int count = (phase.radians().length - 2 * filter.half() - 1) / step + 1;
            double[] slow = new double[count];
            filter.thin(phase.radians(), step, slow, 0, count);
            double mean = Arrays.stream(slow).average().orElse(0);
            double power =
                    Arrays.stream(slow).map(p -> (p - mean) * (p - mean)).average().orElse(0);
            double span = Arrays.stream(slow).max().orElse(0) - Arrays.stream(slow).min().orElse(0);
            return new Sway(mean, power, span);
        }
    }

    /**
     * The noise in the phase.
     *
     * @param density rad²/Hz
     * @param share expanded uncertainty, a share of it
     */
    private record Noise(double density, double share) {

        /** By the median of the lines, so that those of hum do not count. */
        static Noise of(PairPhase phase, double mean) {
            double[] about = Arrays.stream(phase.radians()).map(p -> p - mean).toArray();
            PowerDensity density = PowerDensity.of(about, phase.rateHz(), TRANSFORM);
            // Beside a low tone the band in which it is followed ends sooner.
            double top = Math.min(NOISE_TO_HZ, 0.19 * phase.toneHz());
            int from = (int) Math.ceil(NOISE_FROM_HZ / density.binHz());
            int to = Math.max(from + FEWEST_BINS, (int) Math.floor(top / density.binHz()));
            double[] bins = new double[to - from];
            for (int k = from; k < to; k++) {
                bins[k - from] = density.at(k);
            }
            Arrays.sort(bins);
            double seconds = phase.radians().length / phase.rateHz();
            double scatter = MEDIAN_SCATTER / Math.sqrt(seconds * (to - from) * density.binHz());
            double median = (bins[(bins.length - 1) / 2] + bins[bins.length / 2]) / 2;
            return new Noise(
                    median / medianOverMean(2 * OVERLAPPED * density.pieces()),
                    Math.hypot(2 * scatter, NOISE_UNCERTAINTY));
        }

        /**
         * Of χ² with so many degrees of freedom; E. B. Wilson and M. M. Hilferty, "The distribution
         * of chi-square", Proc. Natl. Acad. Sci. 17, 1931.
         */
        private static double medianOverMean(double freedom) {
            return Math.pow(1 - 2 / (9 * freedom), 3);
        }
    }

    /** What to add to the tone's phase so that it says which period is meant, radians. */
    private static double wholePeriods(double mean, double toneHz, InterchannelDelay whole) {
        if (!whole.delay().isKnown()) {
            return -mean;
        }
        double turn = whole.opposite() ? Math.PI : 0;
        double total = 1e-6 * (whole.delay().value() + whole.responseDelay().value());
        double expected = 2 * Math.PI * toneHz * total + turn;
        return 2 * Math.PI * Math.rint((expected - mean) / (2 * Math.PI)) - turn;
    }

    private static DelayTrace trace(PairPhase phase, double offset, double microseconds) {
        int each = (int) Math.max(1, Math.rint(phase.rateHz() / TRACE_HZ));
        int n = phase.radians().length / each;
        double[] seconds = new double[n];
        double[] delay = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = (i + 0.5) * each / phase.rateHz();
            double sum = 0;
            for (int k = i * each; k < (i + 1) * each; k++) {
                sum += phase.radians()[k] + offset;
            }
            delay[i] = microseconds * sum / each;
        }
        return new DelayTrace(seconds, delay);
    }
}
