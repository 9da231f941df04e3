package offtape.core.realign;

/**
 * Roughly where one sound lies in another.
 *
 * @param start where its first moment lies, seconds
 * @param step seconds of the other that a second of it lasts
 * @param likeness how alike the levels of both are along the whole of it, −1 to 1
 */
record Place(double start, double step, double likeness) {

    /** Where a moment lies, seconds. */
    double at(double seconds) {
        return start + step * seconds;
    }
}
