package offtape.report.measure.line;

/** The power of a stretch over frequency in the time in which lines of a bend are steady. */
final class BentPower {

    private final Stretch stretch;
    private final double[] windows;

    BentPower(Stretch stretch) {
        this.stretch = stretch;
        this.windows = stretch.windows();
    }

    /** The power for a bend, 1/s. */
    LinePower of(double bend) {
        double half = stretch.seconds() / 2;
        double from = Line.turned(-half, bend);
        double to = Line.turned(half, bend);
        double rate = stretch.rateHz();
        double[] x = stretch.samples();
        double[] windowed = new double[(int) ((to - from) * rate)];
        double sum = 0;
        double middle = (x.length - 1) / 2.0;
        for (int i = 0; i < windowed.length; i++) {
            double turned = from + (i + 0.5) / rate;
            double at = middle + Line.seconds(turned, bend) * rate;
            int before = (int) Math.max(0, Math.min(x.length - 2, at));
            double share = at - before;
            double w = windows[before] * (1 + bend * turned / 2);
            windowed[i] = w * ((1 - share) * x[before] + share * x[before + 1]);
            sum += w;
        }
        return LinePower.of(windowed, sum, rate, to - from, 1);
    }
}
