package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpeedMeasureTest {

    private static final ReferenceTable RELATIONS = ReferenceTable.load("wf-reading-relations");

    /**
     * 4 Hz has a weight of 0 dB: the weighted peak is the peak deviation, rms is 0.70711 of it and
     * two sigma 0.99745. It is all wow: of its power 1 / (1 + (4/6)⁶) = 0.919, the rest is flutter.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1000, 3000, 3150, 10_000})
    @Source("closed forms of a sine's peak, rms and two sigma")
    void readingsOfASineAreInTheirRelations(double toneHz) {
        double peak = 0.1;
        Speed s = Tones.speed(Tones.audio(16, Tones.wavering(toneHz, 0.3, peak, 3.99979)), toneHz);
        assertEquals(0.3, s.deviation().value(), 0.0005);
        assertEquals(peak, s.weightedPeak().value(), 0.003 * peak);
        double rms = RELATIONS.number(0, "rmsOrSecond") * peak;
        assertEquals(rms, s.weightedRms().value(), 0.003 * rms);
        double twoSigma = RELATIONS.number(2, "peakOrFirst") * peak;
        assertEquals(twoSigma, s.weightedTwoSigma().value(), 0.003 * twoSigma);
        assertEquals(peak, s.unweightedPeak().value(), 0.003 * peak);
        assertEquals(rms, s.unweightedRms().value(), 0.003 * rms);
        assertEquals(rms, s.americanRms().value(), 0.003 * rms);
        double wow = 1 / (1 + Math.pow(4 / 6.0, 6));
        assertEquals(rms * Math.sqrt(wow), s.wowRms().value(), 0.003 * rms);
        assertEquals(rms * Math.sqrt(1 - wow), s.flutterRms().value(), 0.003 * rms);
        assertEquals(1, s.components().size());
        assertEquals(peak, s.components().get(0).peakPercent(), 0.01 * peak);
        assertEquals(List.of(), s.notes());
        assertEquals(0.2, s.fromSeconds(), 0.05);
        assertEquals(15.6, s.seconds(), 0.1);
    }

    /**
     * 0.9 Hz lies at the weighting's −4.2 − … dB; at 0.5 Hz the American reading has half the
     * power.
     */
    @Test
    void americanPracticeLeavesOutWhatIsSlow() {
        Speed s = Tones.speed(Tones.audio(20, Tones.wavering(3150, 0, 0.2, 0.5)), 3150);
        assertEquals(0.1, s.americanRms().value(), 0.03 * 0.1);
        assertEquals(0.2 * Math.sqrt(0.5), s.wowRms().value(), 0.03 * 0.14);
    }

    /** A tone of 315 Hz cannot carry 200 Hz on both sides without its harmonics coming in. */
    @Test
    void aLowToneDoesNotShowFastFlutter() {
        Speed s = Tones.speed(Tones.audio(8, Tones.wavering(315, 0, 0.3, 4)), 315);
        assertEquals(0.3, s.weightedPeak().value(), 0.01 * 0.3);
        assertTrue(s.wowRms().isKnown());
        for (var q :
                List.of(s.unweightedPeak(), s.unweightedRms(), s.flutterRms(), s.americanRms())) {
            assertEquals(
                    "This tone shows changes of speed up to 173 Hz only, and the reading needs 200"
                            + " Hz. Use a tone of 400 Hz or more.",
                    q.reason());
        }
        assertEquals(0.55 * 315, s.bandHz(), 1e-9);
        assertNull(s.floors().unweightedRms());
        assertNull(s.floors().unweightedPeak());
        assertNull(s.floors().flutterRms());
        assertNull(s.floors().americanRms());
        assertTrue(s.floors().wowRms() > 0);
        assertTrue(s.notes().get(0).startsWith("A tone this low shows changes of speed up to 173"));
        Speed fourHundred = Tones.speed(Tones.audio(8, Tones.wavering(400, 0, 0.3, 4)), 400);
        assertTrue(fourHundred.unweightedRms().isKnown());
    }

    /** Wow of 0.05 % but for 12 s to 22 s, where it is 0.2 %; it changes where its phase is nil. */
    @Test
    void theWorstTenSecondsAreFound() {
        Speed s =
                Tones.speed(
                        Tones.audio(
                                32,
                                t -> {
                                    double phase = 2 * Math.PI * 4 * t;
                                    double d = t >= 12.0625 && t < 22.0625 ? 0.2 : 0.05;
                                    double wow = d / 100 / (2 * Math.PI * 4) * Math.cos(phase);
                                    return 0.1 * Math.sin(2 * Math.PI * 3150 * (t - wow));
                                }),
                        3150);
        assertEquals(12, s.fromSeconds() + s.worstTenSeconds().fromSeconds(), 0.6);
        double[] seconds = s.readings().seconds();
        double[] percent = s.readings().weightedPeakPercent();
        for (int i = 0; i < seconds.length; i++) {
            double t = s.fromSeconds() + seconds[i];
            if (t > 15 && t < 21.5 || t > 25) {
                assertEquals(t < 22 ? 0.2 : 0.05, percent[i], 0.004, "at " + t + " s");
            }
        }
        double highest = Arrays.stream(percent).max().orElseThrow();
        assertEquals(highest, s.weightedPeak().value(), 1e-9);
        assertEquals(highest, s.worstTenSeconds().weightedPeak().value(), 1e-9);
        // The pointer needs a second to rise, so that the window may lie that much later.
        assertEquals(0.2 * Math.sqrt(0.5), s.worstTenSeconds().weightedRms().value(), 0.002);
    }

    @Test
    void aShortToneHasAMeanAndReasons() {
        Speed s = Tones.speed(Tones.audio(4, Tones.wavering(3150, -1.25, 0.05, 4)), 3150);
        assertEquals(-1.25, s.deviation().value(), s.deviation().uncertainty());
        assertFalse(s.weightedPeak().isKnown());
        assertFalse(s.drift().isKnown());
        assertNull(s.readings());
        assertNull(s.worstTenSeconds());
        Speed between = Tones.speed(Tones.audio(9, Tones.steady(3150)), 3150);
        assertTrue(between.weightedPeak().isKnown());
        assertNull(between.worstTenSeconds());
    }

    /**
     * A steady tone, 0.3 % fast: the recorder's clock of 50 ppm counts on the whole speed, 100.3 %,
     * and demodulation 0.0002 %. From 15 s on drift is told, to 0.0001 %.
     */
    @Test
    void aSteadyToneIsAsSureAsTheClock() {
        Speed s = Tones.speed(Tones.audio(15.6, Tones.steady(1.003 * 3150)), 3150);
        assertEquals(0.3, s.deviation().value(), 1e-4);
        assertEquals(50e-6 * 100.3 + 0.0002, s.deviation().uncertainty(), 2e-5);
        assertEquals(0, s.drift().value(), 1e-4);
        assertEquals(1e-4, s.drift().uncertainty(), 2e-5);
        assertEquals(0, s.weightedPeak().value(), 1e-4);
        assertEquals(0.2 * s.weightedFloor().value(), s.weightedFloor().uncertainty(), 1e-12);
        assertEquals(List.of(), s.components());
        assertEquals(220 + 0.012 * 3150, s.bandHz(), 1e-9);
        // Ten seconds of 3 s to 13.5 s.
        assertEquals(3, s.worstTenSeconds().fromSeconds(), 0.51);
        Speed brief = Tones.speed(Tones.audio(15.3, Tones.steady(1.003 * 3150)), 3150);
        assertEquals("The tone is too short to tell drift from wow.", brief.drift().reason());
    }

    /** One hole of 30 ms; the filters see it for 48 values more, and some of the band's. */
    @Test
    void aSingleGapIsTold() {
        DoubleUnaryOperator tone = Tones.steady(3150);
        Speed s =
                Tones.speed(
                        Tones.audio(5.4, t -> t > 2 && t < 2.03 ? 0 : tone.applyAsDouble(t)), 3150);
        assertEquals(1, s.notes().size());
        String note = s.notes().get(0);
        assertTrue(
                note.matches(
                        "The tone was gone or struck by clicks in 1 place, 0\\.(0[89]|10) s in all;"
                                + " straight lines bridge them\\."),
                note);
        assertEquals(
                "The tone is too short: wow and flutter needs 5 s or more.",
                s.weightedRms().reason(),
                "4.95 s");
        Speed five = Tones.speed(Tones.audio(5.46, tone), 3150);
        assertEquals(0, five.weightedRms().value(), 1e-4);
    }
}
