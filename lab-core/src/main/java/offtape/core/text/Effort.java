package offtape.core.text;

/**
 * How much may still be tried on one text. What others wrote can be made to look like many patterns
 * at once and at many places; nobody is to wait for that.
 */
final class Effort {

    /** What going through all patterns once costs. */
    static final int A_DICTIONARY = 50;

    private static final int MOST = 100_000;

    private int left = MOST;

    /** Whether so much is left; if so, it is spent. */
    boolean isLeftFor(int steps) {
        if (left < steps) {
            return false;
        }
        left -= steps;
        return true;
    }
}
