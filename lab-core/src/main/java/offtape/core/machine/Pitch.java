package offtape.core.machine;

/**
 * Pitch of a return re its programme.
 *
 * @param mean over the programme, a ratio near 1
 * @param highest at any moment, a ratio, at least 1
 */
record Pitch(double mean, double highest) {

    private static final double STEP_SECONDS = 0.005;

    /** The pitch over a whole return of a length in seconds. */
    static Pitch of(TimeMap map, double returnLengthSeconds) {
        double highest = 1;
        for (double t = 0; t < returnLengthSeconds; t += STEP_SECONDS) {
            highest = Math.max(highest, 1 + map.returnDeviation(t));
        }
        return new Pitch(map.meanRate(), highest);
    }
}
