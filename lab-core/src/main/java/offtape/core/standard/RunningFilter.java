package offtape.core.standard;

/**
 * A filter that takes a signal block by block, so that memory does not grow with it. How the signal
 * is divided changes no result by more than rounding. For one signal and one thread.
 */
public interface RunningFilter {

    /**
     * Takes the next samples.
     *
     * @param x samples, any number; not modified
     * @return the results that are ready by now, in order, perhaps none
     */
    double[] next(double[] x);

    /** The results still owed once the signal has ended: altogether as many as samples. */
    double[] rest();
}
