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
        Knots<T> knots = new Knots<>(place, value, deviation);
        while (strays.size() < steps.size() / STEPS_A_STRAY) {
            SmoothCurve curve = knots.curve(chosen(steps, kept));
            int worst = worst(curve);
            Integer number = kept.remove(worst);
            if (!standsOff(curve, worst, knots.curve(chosen(steps, kept)))) {
                kept.add(worst, number);
                break;
            }
            strays.add(number);
        }
        return new RobustFit(
                knots.curve(chosen(steps, kept), stiffness), strays.stream().sorted().toList());
    }

    private static <T> List<T> chosen(List<T> steps, List<Integer> numbers) {
        return numbers.stream().map(steps::get).toList();
    }

    /** What of a step is fitted. */
    private record Knots<T>(
            ToDoubleFunction<T> place, ToDoubleFunction<T> value, ToDoubleFunction<T> deviation) {

        SmoothCurve curve(List<T> steps) {
            return curve(steps, SmoothCurve.STIFFNESS);
        }

        SmoothCurve curve(List<T> steps, double stiffness) {
            return new SmoothCurve(
                    apart(of(steps, place)), of(steps, value), of(steps, deviation), stiffness);
        }

        private static <T> double[] of(List<T> steps, ToDoubleFunction<T> what) {
            return steps.stream().mapToDouble(what).toArray();
        }
    }

    private static double[] apart(double[] x) {
        for (int i = 1; i < x.length; i++) {
            x[i] = Math.max(x[i], x[i - 1] + APART_DB);
        }
        return x;
    }

    private static int worst(SmoothCurve curve) {
        double[] size = sizes(curve);
        int worst = 0;
        for (int i = 1; i < size.length; i++) {
            worst = size[i] > size[worst] ? i : worst;
        }
        return worst;
    }

    /**
     * Whether a step stands off.
     *
     * @param others the curve without it: in one with it the strays of its neighbours are its own
     */
    private static boolean standsOff(SmoothCurve curve, int step, SmoothCurve others) {
        double[] sorted = sizes(others);
        Arrays.sort(sorted);
        double usual = Math.max(1, sorted[(sorted.length - 1) / 2] / MEDIAN_OF_NORMAL);
        return sizes(curve)[step] > STANDS_OFF * usual && Math.abs(curve.strays()[step]) > LEAST_DB;
    }

    /** How far each value lies off the curve through the others, in the deviations expected. */
    private static double[] sizes(SmoothCurve curve) {
        double[] stray = curve.strays();
        double[] expected = curve.strayDeviations();
        return IntStream.range(0, stray.length)
                .mapToDouble(i -> Math.abs(stray[i]) / expected[i])
                .toArray();
    }
}
