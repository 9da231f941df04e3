package offtape.core.align;

import offtape.core.audio.AudioSource;

/**
 * Looks at a mark whose place is known to a few frames. Place and speed are those under which the
 * mark, written down anew for each trial so that nothing is interpolated, explains most of the
 * sound; the place of each glide is the top of its envelope, which a phase shift of the path does
 * not move. Level is read as energy, which wow and flutter do not change, less that of the quiet
 * stretch before the mark.
 */
final class MarkSight {

    private static final int ROUNDS = 20;

    /** What moved less in a round has been found: each round leaves about the square of that. */
    private static final double SETTLED_FRAMES = 1e-4;

    private static final double STEP_FRAMES = 1;
    private static final double FARTHEST_FRAMES = 4;
    private static final double MOST_OFF = 0.03;

    /**
     * Polarity is read farther from the middle than this, where the glides lie below 1 kHz: wow
     * that makes high tones late by half a period does not turn these over.
     */
    private static final double LOW_FROM_S = 0.12;

    /** How much is read to either side of the mark, seconds. */
    private static final double MARGIN_S = 0.02;

    /** Length of the quiet stretch, seconds. */
    private static final double QUIET_S = 0.25;

    /**
     * What rounding to 24 bits and the sums here may move at most, found by trial on such paths.
     */
    private static final double LEAST_DOUBT_FRAMES = 5e-4;

    private static final double LEAST_DOUBT_OF_GAIN = 1e-5;

    private final AlignmentMark mark;
    private final int sampleRateHz;

    MarkSight(AlignmentMark mark, int sampleRateHz) {
        this.mark = mark;
        this.sampleRateHz = sampleRateHz;
    }

    /** Correlation with a glide, and the energies that belong to it. */
    private record Sum(double re, double im, double envelope, double template, double low) {

        double power() {
            return re * re + im * im;
        }

        double size() {
            return Math.sqrt(power());
        }
    }

    /**
     * The mark near a place.
     *
     * @param near its middle in the recording, within some frames
     * @param peak highest magnitude of the mark that was sent
     */
    FoundMark at(AudioSource recording, int channel, double near, double peak) {
        int margin = (int) (MARGIN_S * sampleRateHz);
        long from = Math.round(near - mark.middle()) - margin;
        double[] x = recording.read(from, mark.frames() + 2 * margin)[channel];
        double middle = near - from;
        double rate = 1;
        double off = 1;
        for (int i = 0; i < ROUNDS && off > SETTLED_FRAMES; i++) {
            double rising = nearer(x, middle, rate, true);
            double falling = nearer(x, middle, rate, false);
            off = Math.max(Math.abs(rising - middle), Math.abs(falling - middle));
            middle = (rising + falling) / 2;
            rate += (falling - rising) / (mark.parting() * sampleRateHz);
            rate = Math.max(1 - MOST_OFF, Math.min(1 + MOST_OFF, rate));
        }
        Sum rising = sum(x, middle, rate, true);
        Sum falling = sum(x, middle, rate, false);
        double energy = energy(x, 0, x.length);
        double size = rising.size() + falling.size();
        double envelope = rising.envelope + falling.envelope;
        double likeness = Math.min(1, 2 * size * size / (envelope * Math.max(1e-300, energy)));
        double heard = energy - quiet(recording, channel, from) * x.length;
        double gain =
                Math.sqrt(
                        heard > energy / 2
                                ? heard / (rising.template + falling.template)
                                : 4 * size * size / (envelope * envelope));
        double spread = Math.sqrt(Math.max(0, 1 / likeness - 1) / mark.frames());
        return new FoundMark(
                from + middle,
                rate,
                gain / peak,
                likeness,
                Math.max(
                        LEAST_DOUBT_FRAMES, spread * sampleRateHz / (2 * Math.PI * mark.widthHz())),
                Math.max(LEAST_DOUBT_OF_GAIN, spread));
    }

    /**
     * What is left of the low ends of the glides when the path's own rate is known: below 0 if they
     * came back inverted.
     *
     * @param middle of the mark in the recording
     * @param rate of the path on average, above 1 if fast; that of the mark itself holds wow, and
     *     with it the ends would be looked for in the wrong place
     */
    double lowSum(AudioSource recording, int channel, double middle, double rate) {
        int margin = (int) (MARGIN_S * sampleRateHz);
        long from = Math.round(middle - mark.middle()) - margin;
        double[] x = recording.read(from, mark.frames() + 2 * margin)[channel];
        return sum(x, middle - from, rate, true).low + sum(x, middle - from, rate, false).low;
    }

    private static double energy(double[] x, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += x[i] * x[i];
        }
        return sum;
    }

    /** Mean square of the quiet stretch before the mark. */
    private double quiet(AudioSource recording, int channel, long before) {
        int frames = (int) (QUIET_S * sampleRateHz);
        double[] x = recording.read(before - frames, frames)[channel];
        return energy(x, 0, frames) / frames;
    }

    /** Nearer to where the envelope of one glide's correlation is highest, by a parabola. */
    private double nearer(double[] x, double place, double rate, boolean isRising) {
        double before = sum(x, place - STEP_FRAMES, rate, isRising).size();
        double here = sum(x, place, rate, isRising).size();
        double after = sum(x, place + STEP_FRAMES, rate, isRising).size();
        double bend = before - 2 * here + after;
        double move =
                bend < 0
                        ? STEP_FRAMES * (before - after) / (2 * bend)
                        : FARTHEST_FRAMES * Math.signum(after - before);
        return place + Math.max(-FARTHEST_FRAMES, Math.min(FARTHEST_FRAMES, move));
    }

    private Sum sum(double[] x, double middle, double rate, boolean isRising) {
        double reach = AlignmentMark.GLIDE_S * sampleRateHz / rate;
        int from = (int) Math.max(0, Math.ceil(isRising ? middle - reach : middle));
        int to = (int) Math.min(x.length - 1.0, Math.floor(isRising ? middle : middle + reach));
        double re = 0;
        double im = 0;
        double envelope = 0;
        double template = 0;
        double low = 0;
        for (int i = from; i <= to; i++) {
            double t = rate * (i - middle) / sampleRateHz;
            double e = mark.envelope(t);
            double phase = mark.phase(t);
            double cos = e * Math.cos(phase);
            re += x[i] * cos;
            im -= x[i] * e * Math.sin(phase);
            envelope += e * e;
            template += cos * cos;
            low += Math.abs(t) > LOW_FROM_S ? x[i] * cos : 0;
        }
        return new Sum(re, im, envelope, template, low);
    }
}
