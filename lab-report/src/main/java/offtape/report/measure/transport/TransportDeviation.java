package offtape.report.measure.transport;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.standard.FlutterBand;
import offtape.report.measure.speed.HeardDeviation;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * The transport's own deviation, undone from that of a return. Lines are undone one by one ({@link
 * LineInverse}); the rest by least squares along the lattice of delays ({@link LatticeInverse}),
 * over the tape's length, where the heads are always the same distance apart ({@link TapePlace}).
 * What noise and the delay's uncertainty would blow up beside the comb's zeros is held back by the
 * share of it that is no motion (Wiener's filter).
 */
final class TransportDeviation {

    private static final double FIRST_RIDGE = 1e-9;

    /** The ridge must leave motion of this rate alone, to this share. */
    private static final double SLOW_HZ = 0.1;

    private static final double SLOW_SHARE = 0.01;

    private static final double STEP_HZ = 0.25;
    private static final double HIGHEST_HZ = 200;

    private final double[] percent;
    private final List<UndoneLine> lines;
    private final CombDoubt doubt;

    private TransportDeviation(double[] percent, List<UndoneLine> lines, CombDoubt doubt) {
        this.percent = percent;
        this.lines = lines;
        this.doubt = doubt;
    }

    /** Undoes a comb. */
    static TransportDeviation of(HeardDeviation heard, Comb comb) {
        double[] y = logarithms(heard.percent());
        double rate = heard.rateHz();
        HeardLag lag = HeardLag.of(heard.percent(), rate, comb.seconds());
        LineInverse inverse = new LineInverse(y, rate, comb, lag);
        List<UndoneLine> lines = inverse.undo(heard.lines());
        double[] own = inverse.own(lines);
        double[] left = difference(y, inverse.heard(lines));
        // first as if the delay did not waver, to know how the tape moves
        TapePlace even = TapePlace.along(new double[y.length], rate, comb.seconds());
        double[] first = even.toTime(solved(even.toPlaces(left), even.lag(), FIRST_RIDGE));
        CombDoubt early = doubt(first, heard, comb, FIRST_RIDGE);
        double ridge = ridge(comb, early);
        TapePlace place = TapePlace.along(sum(first, own), rate, comb.seconds());
        double[] solved = solved(place.toPlaces(left), place.lag(), ridge);
        CombDoubt unfiltered = doubt(place.toTime(solved), heard, comb, ridge);
        double[] rest = place.toTime(filtered(solved, place.placeRateHz(), unfiltered::later));
        return new TransportDeviation(percents(sum(rest, own)), lines, unfiltered);
    }

    /** Deviation over time, percent, about 0. */
    double[] percent() {
        return percent;
    }

    /** The lines that were undone one by one, largest in the return first. */
    List<UndoneLine> lines() {
        return lines;
    }

    /** How far the comb is undone. */
    CombDoubt doubt() {
        return doubt;
    }

    /** Two sample clocks that differ add a constant, which would grow to a steady drift. */
    private static double[] solved(double[] y, int lag, double ridge) {
        double mean = Arrays.stream(y).average().orElse(0);
        double[] x = new double[y.length];
        Arrays.setAll(x, i -> y[i] - mean);
        double[] solved = LatticeInverse.solve(x, lag, ridge);
        SimpleRegression trend = new SimpleRegression();
        for (int i = 0; i < solved.length; i++) {
            trend.addData(i, solved[i]);
        }
        Arrays.setAll(solved, i -> solved[i] - trend.predict(i));
        return solved;
    }

    private static CombDoubt doubt(double[] rest, HeardDeviation heard, Comb comb, double ridge) {
        CombDoubt finite = new CombDoubt(comb, heard.seconds(), ridge, f -> 1, f -> 0);
        double least = finite.finite();
        DoubleUnaryOperator noise = heard.noiseDensity();
        RestDensity density =
                RestDensity.of(
                        rest,
                        heard.rateHz(),
                        f -> comb.power(f) / (comb.power(f) + least),
                        f -> noise.applyAsDouble(f) * enlarged(comb.power(f), least));
        return new CombDoubt(comb, heard.seconds(), ridge, density::at, noise);
    }

    private static double enlarged(double power, double least) {
        return power / ((power + least) * (power + least));
    }

    /** Half the noise over the motion, where the weighting listens. */
    private static double ridge(Comb comb, CombDoubt doubt) {
        double noise = 0;
        double motion = 0;
        for (double f = STEP_HZ; f < HIGHEST_HZ; f += STEP_HZ) {
            double weight = FlutterBand.WEIGHTED.gain(f) * FlutterBand.WEIGHTED.gain(f);
            noise += weight * doubt.noise().applyAsDouble(f);
            motion += weight * doubt.density().applyAsDouble(f);
        }
        double most = SLOW_SHARE * comb.power(SLOW_HZ);
        return Math.max(FIRST_RIDGE, Math.min(most, noise / (2 * motion)));
    }

    /** Without turning phases; beyond its ends the series goes on turned over. */
    private static double[] filtered(double[] x, double rateHz, DoubleUnaryOperator gain) {
        int n = x.length;
        int size = RealFft.nextPowerOfTwo(2 * n);
        int margin = Math.min(n, (size - n) / 2);
        double[] longer = new double[size];
        for (int i = 0; i < n; i++) {
            longer[margin + i] = x[i];
        }
        for (int i = 1; i <= margin; i++) {
            double fade = 0.5 + 0.5 * Math.cos(Math.PI * i / margin);
            longer[margin - i] = fade * x[Math.min(i, n - 1)];
            longer[margin + n - 1 + i] = fade * x[Math.max(0, n - 1 - i)];
        }
        RealFft fft = RealFft.ofSize(size);
        double binHz = rateHz / size;
        double[] y = fft.inverse(fft.forward(longer).times(k -> gain.applyAsDouble(k * binHz)));
        return Arrays.copyOfRange(y, margin, margin + n);
    }

    // (1 + δ(t))/(1 + δ(s)) becomes a plain difference in logarithms
    private static double[] logarithms(double[] percent) {
        return Arrays.stream(percent).map(p -> 100 * Math.log1p(Math.max(-0.9, p / 100))).toArray();
    }

    private static double[] percents(double[] logarithms) {
        return Arrays.stream(logarithms).map(p -> 100 * Math.expm1(p / 100)).toArray();
    }

    private static double[] sum(double[] a, double[] b) {
        double[] c = new double[a.length];
        Arrays.setAll(c, i -> a[i] + b[i]);
        return c;
    }

    private static double[] difference(double[] a, double[] b) {
        double[] c = new double[a.length];
        Arrays.setAll(c, i -> a[i] - b[i]);
        return c;
    }
}
