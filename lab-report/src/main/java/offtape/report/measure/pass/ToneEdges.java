package offtape.report.measure.pass;

import java.util.DoubleSummaryStatistics;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.report.measure.speed.ToneCourse;

/**
 * Where a tone begins and ends along the tape: where its level crosses half of what it has inside.
 * The tape holds both, so they tell which turn of the tone is which in several replays.
 *
 * @param begins programme seconds, or not a number if the tone does not rise out of silence
 * @param ends programme seconds, or not a number
 */
record ToneEdges(double begins, double ends) {

    private static final double PASS_HZ = 250;
    private static final double RATE_HZ = 4000;
    private static final double OUTSIDE_S = 0.26;
    private static final double INSIDE_S = 0.06;

    /**
     * Looks for both edges.
     *
     * @param place programme time over the time of the recording, also somewhat beyond the tone
     */
    static ToneEdges of(AudioSource recording, ToneCourse tone, DoubleUnaryOperator place) {
        double first = tone.firstSeconds();
        double last = tone.seconds(tone.percent().length - 1);
        Downconverter converter =
                Downconverter.of(PASS_HZ, 2 * PASS_HZ, recording.sampleRateHz(), RATE_HZ);
        double turn = 2 * Math.PI * tone.toneHz();
        Baseband before =
                Baseband.loudest(
                        converter.convert(
                                recording,
                                first - OUTSIDE_S,
                                first + INSIDE_S,
                                t -> turn * place.applyAsDouble(t)));
        Baseband after =
                Baseband.loudest(
                        converter.convert(
                                recording,
                                last - INSIDE_S,
                                last + OUTSIDE_S,
                                t -> turn * place.applyAsDouble(t)));
        return new ToneEdges(
                edge(before, before.size() - 1, -1, turn, place), edge(after, 0, 1, turn, place));
    }

    /** Walks outwards from inside the tone, phase in hand, until the level falls to half. */
    private static double edge(
            Baseband base, int from, int step, double turn, DoubleUnaryOperator place) {
        int inside = (int) (INSIDE_S * base.rateHz());
        double[] phase = base.unwrappedPhase();
        double half = 0;
        double own = 0;
        for (int i = 0; i < inside; i++) {
            half += Math.sqrt(base.power(from + i * step)) / inside / 2;
            own += phase[from + i * step] / inside;
        }
        int k = from;
        while (k >= 0 && k < base.size() && Math.sqrt(base.power(k)) > half) {
            k += step;
        }
        // no fall at all, or it lies further inside: a dropout, or a tone that breaks off
        if (k < 0 || k >= base.size() || k == from) {
            return Double.NaN;
        }
        double low = Math.sqrt(base.power(k));
        double high = Math.sqrt(base.power(k - step));
        double at = k - step * (half - low) / (high - low);
        int near = k - step;
        double ahead = (phase[near] - own) / turn;
        return place.applyAsDouble(base.firstSeconds() + at / base.rateHz()) + ahead;
    }

    /** By how much these edges lie later than others on average; 0 if none can be compared. */
    double laterThan(ToneEdges others) {
        DoubleSummaryStatistics apart = new DoubleSummaryStatistics();
        if (!Double.isNaN(begins - others.begins)) {
            apart.accept(begins - others.begins);
        }
        if (!Double.isNaN(ends - others.ends)) {
            apart.accept(ends - others.ends);
        }
        return apart.getAverage();
    }
}
