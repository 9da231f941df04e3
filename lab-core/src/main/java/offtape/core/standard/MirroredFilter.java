package offtape.core.standard;

import java.util.Arrays;

/**
 * A symmetric response on a signal that goes on as its mirror image at either end, so that neither
 * end is a step.
 */
final class MirroredFilter implements RunningFilter {

    private final RunningFilter filter;
    private final int margin;
    private final SampleQueue ready = new SampleQueue();

    /** The beginning until there is enough of it to mirror, afterwards the latest samples. */
    private double[] kept = new double[0];

    private boolean begun;
    private int early;
    private long owed;

    /**
     * Wraps a filter.
     *
     * @param filter results centred, reaching no further than the margin to either side
     * @param margin samples to mirror
     */
    MirroredFilter(RunningFilter filter, int margin) {
        this.filter = filter;
        this.margin = margin;
    }

    @Override
    public double[] next(double[] x) {
        owed += x.length;
        kept = joined(kept, x);
        if (!begun && kept.length <= margin) {
            return new double[0];
        }
        pass(begun ? x : begin());
        kept = tail(kept, margin + 1);
        return ready();
    }

    @Override
    public double[] rest() {
        if (owed == 0 && kept.length == 0) {
            return new double[0];
        }
        if (!begun) {
            pass(begin());
        }
        double[] mirror = new double[Math.min(margin, kept.length - 1)];
        for (int j = 0; j < mirror.length; j++) {
            mirror[j] = kept[kept.length - 2 - j];
        }
        pass(mirror);
        ready.add(filter.rest());
        return ready();
    }

    private void pass(double[] x) {
        ready.add(filter.next(x));
    }

    /** What is kept so far, with its mirror image ahead. */
    private double[] begin() {
        begun = true;
        early = Math.min(margin, kept.length - 1);
        double[] x = new double[early + kept.length];
        for (int j = 1; j <= early; j++) {
            x[early - j] = kept[j];
        }
        System.arraycopy(kept, 0, x, early, kept.length);
        return x;
    }

    private double[] ready() {
        int skipped = Math.min(early, ready.size());
        ready.take(skipped);
        early -= skipped;
        double[] results = ready.take((int) Math.min(owed, ready.size()));
        owed -= results.length;
        return results;
    }

    private static double[] joined(double[] a, double[] b) {
        double[] both = new double[a.length + b.length];
        System.arraycopy(a, 0, both, 0, a.length);
        System.arraycopy(b, 0, both, a.length, b.length);
        return both;
    }

    private static double[] tail(double[] x, int most) {
        int from = Math.max(0, x.length - most);
        return Arrays.copyOfRange(x, from, x.length);
    }
}
