package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Forty frames whose powers are written down, in bands from 100, 200, 300 … Hz on. Of twenty equal
 * bins a frame's power has 21.114 degrees of freedom; a quarter of χ² lies below 0.77893 of its
 * mean, so that frames of that power, as are the quiet ones here, make a floor of 1, known to a
 * deviation of 0.074. (These figures and the quantiles below are those of a numerical package.)
 */
class ResidueByHandTest {

    private static final int FRAMES = 40;
    private static final int BINS = 20;
    private static final double FREEDOM = 21.114369;
    private static final double QUIET = 0.7789312;
    private static final double DEVIATION = 0.07399996;

    /** Noise in a band from a frequency on. */
    private static BandCourse band(int fromHz, int bins, IntToDoubleFunction power) {
        double[][] frames = new double[FRAMES][fromHz + bins + 1];
        for (int f = 0; f < FRAMES; f++) {
            for (int k = 0; k < bins; k++) {
                frames[f][fromHz + k] = power.applyAsDouble(f) / bins;
            }
        }
        return BandCourse.of(frames, 1, fromHz - 0.5, fromHz + bins - 0.5);
    }

    /** Quiet for thirty frames and of another power in the last ten. */
    private static BandCourse quarter(int fromHz, double power) {
        return band(fromHz, BINS, f -> f < 30 ? QUIET : power);
    }

    private static BandCourse quiet(int fromHz) {
        return quarter(fromHz, QUIET);
    }

    /** What a band has over its floor that has a power in ten of forty frames. */
    private static double over(double power) {
        return 0.75 * QUIET + 0.25 * power - 1;
    }

    /** The floor's and the frames' own scatter, which 0.95 · 40 frames tell independently. */
    private static double variance(double over) {
        return DEVIATION * DEVIATION + 2 * (1 + 2 * over) / (FREEDOM * 0.95 * FRAMES);
    }

    private static Quantity told(double zero, List<BandCourse> bands, SteadyTones.Tone... tones) {
        return new Residue(bands, FRAMES, zero, 1.2).told(List.of(tones));
    }

    private static void assertTold(double power, double doubt, double zero, Quantity found) {
        assertTrue(found.isKnown(), found.reason());
        assertEquals(10 * Math.log10(power / zero), found.value(), 1e-4);
        assertEquals("dB", found.unit());
        assertEquals(10 * Math.log10(1 + doubt / power) + 0.3, found.uncertainty(), 1e-4);
    }

    /**
     * Noise exceeds the threshold in one of 20 000 silences: χ² of 15 degrees (20 bins over 8/3)
     * that many times 40 frames and so many bands: 3.7280 times its mean in one, 3.9639 in four.
     * The floor may have been found too low by 4.5 deviations.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 3.728004, 1.001, true",
        "1, 3.728004, 0.999, false",
        "4, 3.963860, 1.001, true",
        "4, 3.963860, 0.999, false"
    })
    void soundExceedsAThreshold(int count, double quantile, double share, boolean known) {
        double limit = quantile * (1 + 4.5 * DEVIATION);
        List<BandCourse> bands = new ArrayList<>(List.of(quarter(100, share * limit)));
        for (int b = 2; b <= count; b++) {
            bands.add(quiet(100 * b));
        }
        assertEquals(known, told(1, bands).isKnown());
    }

    /** Over the floor, mean of all frames: ¾ · 0.779 + ¼ · 11 − 1 = 2.334, against 100. */
    @Test
    void theFigureIsTheMeanOfAllFrames() {
        double over = over(11);
        assertTold(over, 2 * Math.sqrt(variance(over)), 100, told(100, List.of(quarter(100, 11))));
        assertEquals(2.334, over, 0.001);
    }

    @Test
    void bandsAreAdded() {
        double doubt = 2 * Math.sqrt(variance(over(11)) + variance(over(21)));
        assertTold(
                over(11) + over(21),
                doubt,
                1,
                told(1, List.of(quarter(100, 11), quarter(200, 21), quiet(300))));
    }

    /**
     * Beside a band that stands out another counts from three deviations on: of 0.30 these are
     * 3·√(0.074² + 2·1.60/802.3) = 0.292, of 0.28 they are 0.290. Alone it does not count.
     */
    @ParameterizedTest
    @CsvSource({"0.30, true", "0.28, false"})
    void lessWillDoBesideOthers(double over, boolean counts) {
        BandCourse faint = quarter(200, 4 * (over + 1 - 0.75 * QUIET));
        double more = counts ? over : 0;
        double doubt = 2 * Math.sqrt(variance(over(11)) + (counts ? variance(over) : 0));
        assertTold(over(11) + more, doubt, 1, told(1, List.of(quarter(100, 11), faint)));
        assertFalse(told(1, List.of(quiet(100), faint)).isKnown());
    }

    /**
     * A single frame of 5.5 stands out, though the mean of 1.08 is less than three deviations over.
     */
    @Test
    void oneFrameIsEnough() {
        BandCourse band = band(100, BINS, f -> f == 39 ? 5.5 : f < 12 ? QUIET : 1.05);
        double over = (12 * QUIET + 27 * 1.05 + 5.5) / 40 - 1;
        assertTold(over, 2 * Math.sqrt(variance(over)), 1, told(1, List.of(band)));
    }

    /**
     * Where all bands but a quarter of them grow tenfold, that is hiss of another level: three of
     * four and six of eight, but not two or five.
     */
    @ParameterizedTest
    @CsvSource({"4, 2, true", "4, 3, false", "8, 5, true", "8, 6, false"})
    void mostBandsTogetherAreHiss(int count, int grow, boolean known) {
        List<BandCourse> bands = new ArrayList<>();
        for (int b = 0; b < count; b++) {
            bands.add(b < grow ? quarter(100 + 100 * b, 10) : quiet(100 + 100 * b));
        }
        Quantity found = told(1, bands);
        assertEquals(known, found.isKnown());
        if (known) {
            assertEquals(10 * Math.log10(grow * over(10)), found.value(), 1e-4);
        }
    }

    /**
     * Four bands of 20 degrees of freedom are needed to say so: nineteen bins have 20.09, eighteen
     * 19.06.
     */
    @ParameterizedTest
    @CsvSource({"19, false", "18, true"})
    void fourBandsThatTellAreNeeded(int bins, boolean known) {
        List<BandCourse> bands =
                List.of(
                        quarter(100, 10),
                        quarter(200, 10),
                        quarter(300, 10),
                        band(400, bins, f -> f < 30 ? QUIET : 10));
        assertEquals(known, told(1, bands).isKnown());
    }

    /**
     * While three bands grow threefold the fourth has a hundred: of its mean 1.5 are noise, and the
     * half that was added may be sound.
     */
    @Test
    void soundInLouderHissIsToldLessOfIt() {
        List<BandCourse> bands =
                List.of(quarter(100, 3), quarter(200, 3), quarter(300, 3), quarter(400, 100));
        double over = 0.75 * QUIET + 25 - 1.5;
        double variance =
                2.25 * DEVIATION * DEVIATION + 2 * 1.5 * (1.5 + 2 * over) / (FREEDOM * 38);
        assertTold(over, 2 * Math.sqrt(variance) + 0.5, 1, told(1, bands));
    }

    /** Lines of a band are added, what lies in no band or is fainter than −100 dB is left out. */
    @Test
    void linesAreAdded() {
        List<BandCourse> bands = List.of(quiet(100), quiet(200));
        SteadyTones.Tone loud = new SteadyTones.Tone(105, 0.3, 4e-4);
        SteadyTones.Tone beside = new SteadyTones.Tone(110, 0.2, 5e-4);
        SteadyTones.Tone other = new SteadyTones.Tone(205, 0.1, 7e-4);
        SteadyTones.Tone outside = new SteadyTones.Tone(150, 9, 1);
        SteadyTones.Tone faint = new SteadyTones.Tone(107, 0.99e-4, 1);
        double zero = 1e6;
        assertTold(0.6, 0.08, zero, told(zero, bands, loud, beside, other, outside, faint));
        assertFalse(told(zero, bands, outside, faint).isKnown());
        SteadyTones.Tone least = new SteadyTones.Tone(107, 1.01e-4, 0);
        assertTold(1.01e-4, 0, zero, told(zero, bands, least));
    }

    /**
     * A tone for a part of the time is also seen as a line, up to 1.2 times as loud as it is where
     * it sounds in the middle. It counts once: as a line only if it is louder than that, and then
     * it may be so much too loud.
     */
    @ParameterizedTest
    @CsvSource({"0.5, false", "1.19, false", "1.21, true", "3, true"})
    void aToneCountsOnce(double times, boolean asLine) {
        double over = over(11);
        SteadyTones.Tone line = new SteadyTones.Tone(110, times * over, 1e-4);
        double doubt = asLine ? 0.02 + 0.2 * times * over : 2 * Math.sqrt(variance(over));
        assertTold(
                asLine ? times * over : over,
                doubt,
                1,
                told(1, List.of(quarter(100, 11), quiet(200)), line));
    }

    /**
     * Nothing was found, and it is said what would have been: 3.728 times the floor and 4.5 of its
     * deviations, less the floor, are 3.97, 5.99 dB; with two bands whose other has a floor of 4,
     * 4·(3.846·1.333 − 1) = 16.5, 12.2 dB, rounded up.
     */
    @Test
    void whatWouldHaveBeenFoundIsSaid() {
        assertEquals(
                "Nothing but hiss and hum is heard in the silence; an earlier recording would have"
                        + " been seen from 6 dB.",
                told(1, List.of(quiet(100))).reason());
        String two =
                told(100, List.of(quiet(100), band(200, BINS, f -> 4 * QUIET), quiet(300)))
                        .reason();
        assertTrue(two.contains(" -7 dB"), two);
    }

    /** No less than −100 dB re reference is looked for: a hundred over the floor of 1. */
    @ParameterizedTest
    @CsvSource({"101.1, true", "100.9, false"})
    void whatIsFainterIsLeftAlone(double power, boolean known) {
        Quantity found = told(1e12, List.of(quarter(100, power)));
        assertEquals(known, found.isKnown());
        assertTrue(known || found.reason().contains(" -100 dB"), found.toString());
    }
}
