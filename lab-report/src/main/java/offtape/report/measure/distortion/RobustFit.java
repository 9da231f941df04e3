package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The smooth curve through the steps of a ladder, without those that stand off.
 *
 * @param curve through the steps kept
 * @param strays numbers of the steps left out, in the list given
 */
record RobustFit(SmoothCurve curve, List<Integer> strays) {

    /** A step stands off if it strays by so many of the deviations expected … */
    private static final double STANDS_OFF = 5;

    /** … and by so much, dB. */
    private static final double LEAST_DB = 0.15;

    /** Steps closer together make no curve, dB. */
    private static final double LEAST_SPAN_DB = 0.5;

    /** A ladder may hold a level several times; the curve takes its places so far apart, dB. */
    private static final double APART_DB = 1e-3;

    /** Of so many steps one may be left out. */
    private static final int STEPS_A_STRAY = 5;

    /** The median size of normal values, in deviations. */
    private static final double MEDIAN_OF_NORMAL = 0.6745;

    /**
     * Fits, leaving out the worst step after step as long as one stands off: by five of the
     * deviations that its noise and the curve let expect, or that the scatter of the other steps
     * shows if that is more.
     *
     * @param steps in order of place, of which several may share one
     * @param stiffness of the curve given out; whether a step stands off is judged more leniently
     * @return null if there are not two steps at different places
     */
    static <T> RobustFit of(
            List<T> steps,
            ToDoubleFunction<T> place,
            ToDoubleFunction<T> value,
            ToDoubleFunction<T> deviation,
            double stiffness) {
        List<Integer> kept = new ArrayList<>(IntStream.range(0, steps.size()).boxed().toList());
        List<Integer> strays = new ArrayList<>();
        int last = steps.size() - 1;
        if (last < 1
                || place.applyAsDouble(steps.get(last)) - place.applyAsDouble(steps.get(0))
                        < LEAST_SPAN_DB) {
            return null;
        }
        while (true) {
            List<T> now = kept.stream().map(steps::get).toList();
            double[] x = apart(now.stream().mapToDouble(place).toArray());
            double[] y = now.stream().mapToDouble(value).toArray();
            double[] u = now.stream().mapToDouble(deviation).toArray();
            SmoothCurve curve = new SmoothCurve(x, y, u);
            int worst = strays.size() < steps.size() / STEPS_A_STRAY ? worst(curve) : -1;
            if (worst < 0) {
                SmoothCurve given = new SmoothCurve(x, y, u, stiffness);
                return new RobustFit(given, strays.stream().sorted().toList());
            }
            strays.add(kept.remove(worst));
        }
    }

    private static double[] apart(double[] x) {
        for (int i = 1; i < x.length; i++) {
            x[i] = Math.max(x[i], x[i - 1] + APART_DB);
        }
        return x;
    }

    private static int worst(SmoothCurve curve) {
        double[] stray = curve.strays();
        double[] expected = curve.strayDeviations();
        double[] size =
                IntStream.range(0, stray.length)
                        .mapToDouble(i -> Math.abs(stray[i]) / expected[i])
                        .toArray();
        double[] sorted = size.clone();
        Arrays.sort(sorted);
        double usual = Math.max(1, sorted[(sorted.length - 1) / 2] / MEDIAN_OF_NORMAL);
        int worst = 0;
        for (int i = 1; i < size.length; i++) {
            worst = size[i] > size[worst] ? i : worst;
        }
        boolean off = size[worst] > STANDS_OFF * usual && Math.abs(stray[worst]) > LEAST_DB;
        return off ? worst : -1;
    }
}
