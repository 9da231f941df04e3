package offtape.core.machine;

/**
 * The time map at even steps of the programme, ten a second and its end.
 *
 * @param programmeSeconds programme times
 * @param returnSeconds return times at which they are heard, same length
 */
public record TimeMapTruth(double[] programmeSeconds, double[] returnSeconds) {

    private static final double STEP_SECONDS = 0.1;

    static TimeMapTruth of(TimeMap map) {
        double length = map.programmeLengthSeconds();
        int steps = (int) Math.ceil(length / STEP_SECONDS);
        double[] programme = new double[steps + 1];
        double[] heard = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            programme[i] = Math.min(length, i * STEP_SECONDS);
            heard[i] = map.returnSeconds(programme[i]);
        }
        return new TimeMapTruth(programme, heard);
    }
}
