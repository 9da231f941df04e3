package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import offtape.core.dsp.PowerDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tones in a floor whose density is known exactly: sines on every second bin of the transforms, in
 * turn a quarter of a turn apart. Under Hann's window a sine of mean square p has the density 2p/3
 * a bin on its bin and a quarter of that on the two beside, where those of its neighbours, being in
 * quadrature, add up to half. Whole pieces of such a sound are all alike.
 *
 * <p>Transforms of 1024 at 2048 Hz: bins lie 2 Hz apart, and 24 at either end only serve as noise.
 */
class SteadyTonesByHandTest {

    private static final int SIZE = 1024;
    private static final int RATE = 2048;
    private static final double BIN_HZ = 2;
    private static final double FLOOR = 1e-9;
    private static final double LINE = 1e-6;

    /** Mains none of whose multiples lies in what is looked at. */
    private static final OptionalDouble ELSEWHERE = OptionalDouble.of(10_000);

    /** Sines on even bins, as many samples as so many transforms that overlap by half take. */
    private static double[] comb(int pieces, IntToDoubleFunction meanSquare) {
        double[] cosine = new double[SIZE];
        Arrays.setAll(cosine, i -> Math.cos(2 * Math.PI * i / SIZE));
        double[] x = new double[SIZE / 2 * (pieces + 1)];
        for (int bin = 2; bin < SIZE / 2; bin += 2) {
            double peak = Math.sqrt(2 * meanSquare.applyAsDouble(bin));
            int start = bin % 4 == 0 ? 0 : SIZE / 4;
            for (int i = 0; i < x.length; i++) {
                x[i] += peak * cosine[(bin * i + start) % SIZE];
            }
        }
        return x;
    }

    /** A floor with one louder sine. */
    private static double[] oneTone(int pieces, int bin, double meanSquare) {
        return comb(pieces, k -> k == bin ? meanSquare : FLOOR);
    }

    /** A floor with a line anywhere. */
    private static double[] line(int pieces, double hz) {
        return add(comb(pieces, k -> FLOOR), hz, LINE);
    }

    private static double[] add(double[] x, double hz, double meanSquare) {
        for (int i = 0; i < x.length; i++) {
            x[i] += Math.sqrt(2 * meanSquare) * Math.sin(2 * Math.PI * hz * i / RATE);
        }
        return x;
    }

    private static List<SteadyTones.Tone> find(
            double[] x, double fromHz, double toHz, OptionalDouble mains) {
        return new SteadyTones(x, RATE, PowerDensity.of(x, RATE, SIZE))
                .find(fromHz, toHz, 1e-4, mains);
    }

    private static double[] found(double[] x, OptionalDouble mains) {
        return find(x, 0, RATE, mains).stream()
                .mapToDouble(SteadyTones.Tone::frequencyHz)
                .toArray();
    }

    /**
     * One transform has 2 degrees of freedom: χ² exceeds −2·ln s in a share s of all cases, and the
     * median is taken as (8/9)³ of the mean. The noise beside, a median of 21 bins of whose powers
     * 1.944 are alike, may have been found too low by 4.5·1.2533·√(1.944/21).
     */
    @ParameterizedTest
    @CsvSource({
        "400, 400, 1, 1.01, true",
        "400, 400, 1, 0.99, false",
        "399.9, 400.1, 1, 0.99, false",
        "300, 498, 100, 1.01, true",
        "300, 498, 100, 0.99, false",
        "299, 499, 100, 1.01, true",
        "299, 499, 100, 0.99, false"
    })
    void aToneOfOneTransformMustExceedItsThreshold(
            double fromHz, double toHz, int bins, double share, boolean found) {
        double doubt = 1 + 4.5 * 1.2533 * Math.sqrt(1.944 / 21);
        double limit = -Math.log(1e-4 / bins) * doubt / Math.pow(8 / 9.0, 3) * FLOOR;
        double[] x = oneTone(1, 200, share * limit);
        assertEquals(found ? 1 : 0, find(x, fromHz, toHz, ELSEWHERE).size());
    }

    /**
     * Four transforms that overlap by half have 36·16/(19·4 − 1) = 7.68 degrees of freedom, of
     * which χ² exceeds 31.210 in one of ten thousand cases (a numerical package). The noise may be
     * found too low by 4.5·1.2533·√(2/7.68·1.944/21) = 0.8756; the median of χ² is 0.91567 of its
     * mean (1 − 2/(9·7.68), cubed). Half a transform more would be no fifth one.
     */
    @ParameterizedTest
    @CsvSource({"0, 1.01, true", "0, 0.99, false", "511, 1.01, true", "511, 0.99, false"})
    void moreTransformsTakeLess(int more, double share, boolean found) {
        double limit = 31.210 / 7.68 * 1.8756 / 0.91567 * FLOOR;
        double[] x = Arrays.copyOf(oneTone(4, 200, share * limit), 2560 + more);
        assertEquals(found ? 1 : 0, find(x, 400, 400, ELSEWHERE).size());
    }

    /**
     * In units of 2/3 of a bin's density: noise N = p/(8/9)³; the tone's bin holds P, those beside
     * (P + p)/4, then p and p/2 on either side. Seven bins less the noise are the power, and each
     * adds N·(N + 2·over) to the square of what it scatters by, for 2 degrees of freedom of bins of
     * which 1.944 are alike.
     */
    @Test
    void powerAndVarianceAreThoseOfSevenBins() {
        double tone = 100 * FLOOR;
        List<SteadyTones.Tone> found = find(oneTone(1, 200, tone), 400, 400, ELSEWHERE);
        assertEquals(400, found.get(0).frequencyHz());
        double noise = FLOOR / Math.pow(8 / 9.0, 3);
        double power = 1.5 * tone + 3.5 * FLOOR - 7 * noise;
        assertEquals(2 / 3.0 * power, found.get(0).power(), 1e-6 * tone);
        double beside = (tone + FLOOR) / 4 - noise;
        double squares = 7 * noise * noise + 2 * noise * (tone - noise + 2 * beside);
        assertEquals(
                1.944 * 4 / 9 * squares, found.get(0).variance(), 1e-6 * found.get(0).variance());
    }

    /**
     * Noise is the median from 4 to 24 bins away, of the louder side, which some other tones do not
     * move; what is nearer or farther does not count. Sines of 4 times the floor on seven bins make
     * thirteen of 21 louder, of which the six between have half as much.
     */
    @ParameterizedTest
    @CsvSource({
        "-24, -4, 4",
        "4, 24, 4",
        "-24, -12, 2",
        "12, 24, 2",
        "-24, -16, 1",
        "16, 24, 1",
        "-8, -4, 1",
        "26, 100, 1",
        "-100, -26, 1"
    })
    void noiseIsThatOfTheLouderSide(int from, int to, int median) {
        double tone = 1000 * FLOOR;
        double[] x =
                comb(
                        1,
                        k ->
                                k == 200
                                        ? tone
                                        : k >= 200 + from && k <= 200 + to ? 4 * FLOOR : FLOOR);
        double noise = median * FLOOR / Math.pow(8 / 9.0, 3);
        double power = 2 / 3.0 * (1.5 * tone + 3.5 * FLOOR - 7 * noise);
        // The bins three away have half the mean of what is on either side of them.
        assertEquals(power, find(x, 400, 400, ELSEWHERE).get(0).power(), 2.1 * FLOOR);
    }

    /** A tone is the highest of its seven bins. */
    @Test
    void tonesThatAreNearAreOne() {
        double[] three = add(oneTone(1, 200, LINE), 406, 3 * LINE);
        assertArrayEquals(new double[] {406}, found(three, ELSEWHERE));
        double[] below = add(oneTone(1, 200, LINE), 394, 3 * LINE);
        assertArrayEquals(new double[] {394}, found(below, ELSEWHERE));
        double[] four = add(oneTone(1, 200, LINE), 408, 3 * LINE);
        assertArrayEquals(new double[] {400, 408}, found(four, ELSEWHERE));
    }

    /**
     * Four transforms start every 512 samples, a fifth would need 511 more than there are: 3071
     * samples are told as if they were 2048 where all four overlap.
     */
    @Test
    void theMiddleIsToldTooLoud() {
        double[] x = Arrays.copyOf(comb(4, k -> FLOOR), 3071);
        SteadyTones tones = new SteadyTones(x, RATE, PowerDensity.of(x, RATE, SIZE));
        assertEquals(3071 / 2048.0, tones.middle(), 1e-12);
    }

    /** Bins 24 to 488 have bins to both sides that tell the noise. */
    @ParameterizedTest
    @CsvSource({"22, 0", "24, 1", "488, 1", "490, 0"})
    void bothSidesAreNeeded(int bin, int tones) {
        assertEquals(tones, found(line(1, BIN_HZ * bin), ELSEWHERE).length);
    }

    /** From 400 to 500 Hz, both included. */
    @ParameterizedTest
    @CsvSource({"396, 0", "400, 1", "500, 1", "504, 0"})
    void bothEndsBelongToTheRange(int hz, int tones) {
        double[] x = line(1, hz);
        assertEquals(tones, find(x, 400, 500, ELSEWHERE).size());
    }

    /**
     * Where the mains are not known, three and a half bins, 7 Hz, and a hertz for each order belong
     * to each of twelve multiples of 50 and of 60 Hz: 11·50 + 18 = 568 Hz is the first that does
     * not, and 12·60 + 19 = 739 Hz the end of all.
     */
    @ParameterizedTest
    @CsvSource({
        "566, false",
        "568, true",
        "570, true",
        "582, false",
        "720, false",
        "738, false",
        "740, true",
        "750, true",
        "780, true"
    })
    void unknownMainsTakeWhatIsNear(int hz, boolean tone) {
        double[] expected = tone ? new double[] {hz} : new double[0];
        assertArrayEquals(expected, found(line(1, hz), OptionalDouble.empty()));
    }

    /**
     * Known mains take 7 Hz and 0.03 Hz for each order about twelve multiples: ten times 50.1 Hz
     * are 501 Hz, which reach from 493.7 to 508.3 Hz; of the thirteenth on, what does not lie in
     * its place is a tone.
     */
    @ParameterizedTest
    @CsvSource({
        "508, 50.1, false",
        "508, 50.06, true",
        "494, 50.1, false",
        "494, 50.14, true",
        "606, 50, false",
        "656, 50, true"
    })
    void knownMainsTakeWhatIsNear(int hz, double mains, boolean tone) {
        double[] expected = tone ? new double[] {hz} : new double[0];
        assertArrayEquals(expected, found(line(3, hz), OptionalDouble.of(mains)));
    }

    /**
     * A line at 706 Hz lies off its place, 14 times 50 Hz, but is one of a buzz if lines stand
     * within two bins, 4 Hz, of two of the multiples 12, 13, 15 and 16.
     */
    @ParameterizedTest
    @CsvSource({
        "654, 754, false",
        "646, 746, false",
        "600, 800, false",
        "604, 654, false",
        "754, 804, false",
        "654, 1, true",
        "800, 1, true",
        "658, 758, true",
        "642, 742, true",
        "550, 850, true",
        "675, 725, true"
    })
    void twoNeighboursMakeABuzz(double one, double other, boolean tone) {
        double[] x = add(add(line(5, 706), one, LINE), other, LINE);
        double[] at = found(x, OptionalDouble.of(50));
        assertEquals(tone, Arrays.stream(at).anyMatch(hz -> hz == 706), Arrays.toString(at));
    }

    /** Multiples of which nothing can be known, at the ends of the density, are no neighbours. */
    @Test
    void neighboursMayLieOutside() {
        double[] x = add(line(5, 956), 906, LINE);
        assertArrayEquals(new double[] {906, 956}, found(x, OptionalDouble.of(50)));
        // Bins of 25 Hz, as a recording of 384 kHz nearly has: 13 times 50 Hz is bin 26, in reach
        // of
        // the multiples beside, so that whatever lies there is left to the mains.
        double[] coarse = oneTone(2, 26, LINE);
        assertEquals(
                List.of(),
                new SteadyTones(coarse, 25_600, PowerDensity.of(coarse, 25_600, SIZE))
                        .find(0, 12_800, 1e-4, OptionalDouble.of(50)));
    }

    /**
     * A steady line at 700 Hz, in the place of the fourteenth multiple, is the mains', if it holds
     * more than half of what is there: of 1.75 with a line three bins away, of whose 0.9 the share
     * (1 + ¼)/1½ lies within three bins, but not of some 2.6 with another on the other side.
     */
    @Test
    void aHighOrderHoldsMostOfWhatIsThere() {
        OptionalDouble mains = OptionalDouble.of(50);
        assertArrayEquals(new double[0], found(line(15, 700), mains));
        double[] one = add(line(15, 700), 706, 0.9 * LINE);
        assertArrayEquals(new double[0], found(one, mains));
        double[] two = add(add(line(15, 700), 706, 0.9 * LINE), 695, 0.9 * LINE);
        assertArrayEquals(new double[] {700}, found(two, mains));
    }

    /** One that lies in its place but comes and goes is a tone. */
    @ParameterizedTest
    @ValueSource(ints = {0, 6})
    void aHighOrderIsThereAllTheTime(int silentFrom) {
        double[] x = comb(15, k -> FLOOR);
        double[] tone = add(new double[x.length], 700, LINE);
        Arrays.fill(tone, silentFrom * 512, (silentFrom + 10) * 512, 0);
        Arrays.setAll(x, i -> x[i] + tone[i]);
        assertArrayEquals(new double[] {700}, found(x, OptionalDouble.of(50)));
    }
}
