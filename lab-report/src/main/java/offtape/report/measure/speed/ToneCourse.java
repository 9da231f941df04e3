package offtape.report.measure.speed;

import java.util.Arrays;

/**
 * The speed deviation over a steady tone, or over the first ten minutes of a longer one.
 *
 * @param firstSeconds time of the first value in the recording
 * @param rateHz values a second, 1000 or a little more
 * @param percent deviation from nominal; not to be modified
 * @param toneHz nominal frequency of the tone
 * @param bandHz fastest change of speed that the tone can show
 */
public record ToneCourse(
        double firstSeconds, double rateHz, double[] percent, double toneHz, double bandHz) {

    static ToneCourse of(ToneStream tone) {
        int most = (int) (SpeedReader.LINES_S * tone.rateHz());
        double[] percent = new double[(int) Math.min(tone.samples(), most)];
        int[] taken = {0};
        tone.read(
                part -> {
                    int some = Math.min(part.length, percent.length - taken[0]);
                    System.arraycopy(part, 0, percent, taken[0], some);
                    taken[0] += some;
                });
        return new ToneCourse(
                tone.firstSeconds(),
                tone.rateHz(),
                Arrays.copyOf(percent, taken[0]),
                tone.nominalHz(),
                tone.bandHz());
    }

    /** Time of a value in the recording, seconds. */
    public double seconds(double index) {
        return firstSeconds + index / rateHz;
    }
}
