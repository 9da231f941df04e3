package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A pulse exp(−t²/2σ²)·cos(2πft) sought in sound that holds it in known places. The envelope of its
 * correlation with itself is exp(−τ²/4σ²), so the logarithm of its power is a parabola.
 */
class HeardSpanTest {

    private static final double SIGMA = 12;
    private static final double TURNS = 0.1;

    /** Half the template: five σ, where the pulse has fallen to 4e-6. */
    private static final int HALF = 60;

    private static final int LENGTH = 1000;
    private static final double STRETCH = 1.0125;

    /** The pulse, its middle on the middle sample. */
    private static final double[] TEMPLATE = with(new double[2 * HALF + 1], HALF, 1);

    private static double[] with(double[] x, double place, double gain) {
        for (int i = 0; i < x.length; i++) {
            double t = i - place;
            x[i] +=
                    gain
                            * Math.exp(-t * t / (2 * SIGMA * SIGMA))
                            * Math.cos(2 * Math.PI * TURNS * t);
        }
        return x;
    }

    /** A tone that the pulse does not hold: at 0.35 turns a sample its spectrum is at exp(−178). */
    private static double[] withTone(double[] x, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.sin(2 * Math.PI * 0.35 * i);
        }
        return x;
    }

    private static double energy(double[] x, int from, int count) {
        double sum = 0;
        for (int i = from; i < from + count; i++) {
            sum += x[i] * x[i];
        }
        return sum;
    }

    private static double[] pulse(double place, double gain) {
        return with(new double[LENGTH], place, gain);
    }

    private static double[] silence() {
        return new double[LENGTH];
    }

    /** From whichever side it is approached; all that is heard is the pulse. */
    @ParameterizedTest
    @CsvSource({"300, 300", "300.25, 330", "299.6, 330", "412.5, 385", "412.5, 430"})
    void thePlaceIsFoundBetweenSamples(double place, double from) {
        HeardSpan heard = HeardSpan.of(new double[][] {pulse(place, 0.5)});
        for (HeardSpan.Peak peak :
                new HeardSpan.Peak[] {
                    heard.anywhere(TEMPLATE, STRETCH), heard.near(TEMPLATE, from, STRETCH)
                }) {
            assertEquals(place, peak.place(), 1e-4);
            assertEquals(1, peak.likeness(), 1e-3);
            assertEquals(1, peak.score(), 2e-3);
            assertArrayEquals(new int[] {1}, peak.signs());
            assertEquals(STRETCH, peak.stretch());
        }
    }

    /** Of two pulses the near one, be it the weaker; of all places the strong one. */
    @Test
    void nearAPlaceNoOtherOneIsTaken() {
        HeardSpan heard = HeardSpan.of(new double[][] {with(pulse(300, 0.2), 700, 1)});
        assertEquals(300, heard.near(TEMPLATE, 320, 1).place(), 1e-3);
        assertEquals(300, heard.near(TEMPLATE, 280, 1).place(), 1e-3);
        assertEquals(700, heard.near(TEMPLATE, 690, 1).place(), 1e-3);
        assertEquals(700, heard.anywhere(TEMPLATE, 1).place(), 1e-3);
    }

    /**
     * The template lies wholly inside: its middle from sample 60 to 939. A pulse at these places is
     * found, one beyond is told at them, since power rises up to there.
     */
    @ParameterizedTest
    @CsvSource({
        "60, 61, 60",
        "60, 80, 60",
        "60, 60, 60",
        "60, -500, 60",
        "55.3, 75, 60",
        "55.3, 60, 60",
        "939, 938, 939",
        "939, 920, 939",
        "939, 939, 939",
        "939, 5000, 939",
        "944.7, 930, 939",
        "944.7, 939, 939"
    })
    void theEndsAreReachedAndNotPassed(double place, double from, double found) {
        HeardSpan heard = HeardSpan.of(new double[][] {pulse(place, 1)});
        assertEquals(found, heard.near(TEMPLATE, from, 1).place(), 0);
        assertEquals(found, heard.anywhere(TEMPLATE, 1).place(), 0);
    }

    /** No place of silence is better than where one looks, or than the first of all. */
    @Test
    void silenceHasNeitherPlaceNorSign() {
        HeardSpan heard = HeardSpan.of(new double[][] {silence(), silence()});
        HeardSpan.Peak near = heard.near(TEMPLATE, 500, 1);
        assertEquals(500, near.place(), 0);
        assertEquals(0, near.likeness(), 0);
        assertEquals(0, near.score(), 0);
        assertArrayEquals(new int[] {0, 0}, near.signs());
        assertEquals(HALF, heard.anywhere(TEMPLATE, 1).place(), 0);
    }

    /** Each its own: upright, inverted, silent. */
    @Test
    void signsAreThoseOfTheChannels() {
        HeardSpan heard =
                HeardSpan.of(new double[][] {pulse(300, 0.5), pulse(300, -0.2), silence()});
        assertArrayEquals(new int[] {1, -1, 0}, heard.anywhere(TEMPLATE, 1).signs());
    }

    /** A channel that is heard with less than a fiftieth of the loudest one's amplitude. */
    @ParameterizedTest
    @CsvSource({"0.0201, -1", "0.0199, 0"})
    void crosstalkHasNoSign(double share, int sign) {
        HeardSpan heard =
                HeardSpan.of(
                        new double[][] {
                            pulse(300, 0.5 * -share), pulse(300, 0.5), pulse(300, 0.25)
                        });
        assertArrayEquals(new int[] {sign, 1, 1}, heard.near(TEMPLATE, 305, 1).signs());
    }

    /**
     * Beside a tone of the energy W over its length a pulse of energy E is alike by √(E/(E + W)),
     * and is the share E/(E + W) of the power; three tenths of likeness are needed for a sign.
     */
    @ParameterizedTest
    @CsvSource({"0.31, -1", "0.29, 0", "0.8, -1"})
    void likenessIsWhatThePulseIsOfAllThatIsHeard(double likeness, int sign) {
        double whole = energy(withTone(silence(), 1), 240, 2 * HALF + 1);
        double pulse = 0.25 * energy(TEMPLATE, 0, 2 * HALF + 1);
        double peak = Math.sqrt(pulse * (1 / (likeness * likeness) - 1) / whole);
        HeardSpan heard = HeardSpan.of(new double[][] {withTone(pulse(300, -0.5), peak)});
        HeardSpan.Peak found = heard.near(TEMPLATE, 310, 1);
        assertEquals(300, found.place(), 0.05);
        assertEquals(likeness, found.likeness(), 0.005);
        assertEquals(likeness * likeness, found.score(), 0.005);
        assertArrayEquals(new int[] {sign}, found.signs());
    }

    /** The clearer channel is as like as it is, whatever the other one holds. */
    @ParameterizedTest
    @CsvSource({"false", "true"})
    void ofSeveralChannelsTheMostAlikeTellsAndTheScoreIsOfAll(boolean toneFirst) {
        double[] tone = withTone(silence(), 0.3);
        double[] pulse = pulse(300, 0.5);
        HeardSpan heard =
                HeardSpan.of(
                        toneFirst ? new double[][] {tone, pulse} : new double[][] {pulse, tone});
        HeardSpan.Peak peak = heard.anywhere(TEMPLATE, 1);
        double sought = energy(pulse, 240, 2 * HALF + 1);
        double other = energy(tone, 240, 2 * HALF + 1);
        assertEquals(1, peak.likeness(), 1e-3);
        assertEquals(sought / (sought + other), peak.score(), 2e-3);
    }

    /** Twice the pulse in the template explains no more: the score is a share. */
    @Test
    void theScoreDoesNotHangOnTheTemplatesLevel() {
        double[] twice = with(TEMPLATE.clone(), HALF, 1);
        HeardSpan heard = HeardSpan.of(new double[][] {withTone(pulse(300, 0.5), 0.05)});
        HeardSpan.Peak one = heard.near(TEMPLATE, 300, 1);
        HeardSpan.Peak two = heard.near(twice, 300, 1);
        assertEquals(one.score(), two.score(), 1e-12);
        assertEquals(one.likeness(), two.likeness(), 1e-12);
    }

    /** Every fourth sample of the pulse. */
    private static double[] thin() {
        double[] out = new double[2 * HALF / 4 + 1];
        for (int i = 0; i < out.length; i++) {
            out[i] = TEMPLATE[4 * i];
        }
        return out;
    }

    /**
     * Of every fourth sample sums are a fourth, and of the template's energy too: where all that is
     * heard is the pulse, correlation squared over both energies is a fourth. A tone that the lower
     * rate does not hold is heard all the same, on whichever channel.
     */
    @Test
    void aGlanceTellsPlaceAndShareRoughly() {
        double[] pulse = pulse(332, 0.5);
        HeardSpan.Glance alone =
                HeardSpan.of(new double[][] {pulse}).thinned(4).glance(thin(), STRETCH);
        assertEquals(332, alone.place(), 0);
        assertEquals(0.25, alone.score(), 0.005);
        assertEquals(STRETCH, alone.stretch());
        double[] tone = withTone(silence(), 0.3);
        double sought = energy(pulse, 272, 2 * HALF + 4);
        double other = energy(tone, 272, 2 * HALF + 4);
        double share = sought / (sought + other);
        HeardSpan.Glance beside =
                HeardSpan.of(new double[][] {tone, pulse}).thinned(4).glance(thin(), 1);
        assertEquals(332, beside.place(), 0);
        assertEquals(0.25 * share, beside.score(), 0.005 * share);
        HeardSpan.Glance mixed =
                HeardSpan.of(new double[][] {withTone(pulse.clone(), 0.3)})
                        .thinned(4)
                        .glance(thin(), 1);
        assertEquals(332, mixed.place(), 0);
        assertEquals(0.25 * share, mixed.score(), 0.01 * share);
    }

    /** What is heard before and after the template's place is not laid to it. */
    @Test
    void aGlanceIsOfItsOwnPlace() {
        double[] x = pulse(500, 0.5);
        for (int i = 0; i < 400; i++) {
            x[i] += 0.8 * Math.sin(2 * Math.PI * 0.35 * i);
            x[LENGTH - 1 - i] += 0.8 * Math.sin(2 * Math.PI * 0.35 * i);
        }
        HeardSpan.Glance glance = HeardSpan.of(new double[][] {x}).thinned(4).glance(thin(), 1);
        assertEquals(500, glance.place(), 0);
        assertEquals(0.25, glance.score(), 0.005);
    }

    /** Of 1000 samples every fourth are 250, of which 31 are taken: the last middle is 234. */
    @ParameterizedTest
    @CsvSource({"60, 60", "936, 936", "940, 936", "1002, 936"})
    void aGlanceReachesTheEnds(double place, double found) {
        HeardSpan.Thinned thinned = HeardSpan.of(new double[][] {pulse(place, 1)}).thinned(4);
        assertEquals(found, thinned.glance(thin(), 1).place(), 0);
    }

    @Test
    void aGlanceAtSilenceIsWorthNothing() {
        HeardSpan.Thinned thinned = HeardSpan.of(new double[][] {silence()}).thinned(4);
        assertEquals(0, thinned.glance(thin(), 1).score(), 0);
        assertEquals(HALF, thinned.glance(thin(), 1).place(), 0);
    }
}
