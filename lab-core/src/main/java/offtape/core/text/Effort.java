package offtape.core.text;

/**
 * How much may still be tried on one text. What others wrote can be made to look like many patterns
 * at once and at many places; nobody is to wait for that.
 */
final class Effort {

    /** What going through all patterns once costs, however short the text. */
    private static final int A_DICTIONARY = 50;

    /** So many letters more cost a step more, since many patterns are sought throughout a text. */
    private static final int LETTERS_A_STEP = 8;

    private static final int MOST = 100_000;

    private int left = MOST;

    /** Whether there is enough left to go through all patterns with a text; if so, it is spent. */
    boolean isLeftForAll(String text) {
        return isLeftFor(A_DICTIONARY + text.length() / LETTERS_A_STEP);
    }

    /** Whether there is too little left to know anything again. */
    boolean isSpent() {
        return left < A_DICTIONARY;
    }

    /** Whether so much is left; if so, it is spent. */
    boolean isLeftFor(int steps) {
        if (left < steps) {
            return false;
        }
        left -= steps;
        return true;
    }
}
