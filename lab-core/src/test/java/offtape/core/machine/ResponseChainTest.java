package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.machine.spec.MachineSpec;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Linear response: losses, edges, contour, gains. */
class ResponseChainTest {

    /**
     * Losses re 1 kHz from the table against the filter that runs, at 96 kHz so that its band limit
     * lies above the table. Tolerance: two roundings of 0.005 dB and 0.02 dB for the kink at 0 Hz
     * that a filter of finite length rounds off.
     */
    @ParameterizedTest
    @CsvSource({
        "spacing-0.5um, 'spacingLossMicrometres':0.5",
        "spacing-1um, 'spacingLossMicrometres':1",
        "gap-1um, 'gapMicrometres':1",
        "gap-3um, 'gapMicrometres':3",
        "thickness-5um, 'thicknessMicrometres':5",
        "thickness-10um, 'thicknessMicrometres':10"
    })
    @Source("Wallace 1951 (spacing, thickness); handbook of sound recording (gap)")
    void lossesFollowTheTable(String column, String member) {
        ReferenceTable table = ReferenceTable.load("losses-worked");
        int seen = 0;
        for (int row = 0; row < table.size(); row++) {
            double speed = table.number(row, "wavelength") * table.number(row, "frequency") / 1000;
            double frequency = table.number(row, "frequency");
            if (table.hasNumber(row, column) && frequency > 1000) {
                double published = table.number(row, column) - atOneKilohertz(table, row, column);
                double db = lossDb(speed, member, frequency);
                double tolerance = 0.012 + 5e-4 * Math.abs(table.number(row, column));
                assertEquals(published, db, tolerance, column + " at " + speed + " " + frequency);
                seen++;
            }
        }
        assertTrue(seen > 20, "rows seen: " + seen);
    }

    /** Azimuth loss of the table, 5 arc minutes across 2 mm, at 190.5 and 381 mm/s. */
    @Test
    @Source("sin(x)/x of a track read at an angle")
    void azimuthLossFollowsTheTable() {
        ReferenceTable table = ReferenceTable.load("losses-worked");
        for (int row = 0; row < table.size(); row++) {
            double frequency = table.number(row, "frequency");
            if (table.number(row, "speed") > 19 && frequency > 1000) {
                double speed = Math.rint(table.number(row, "wavelength") * frequency / 100) / 10;
                double published = table.number(row, "azimuth-5min");
                double db = lossDb(speed, "'azimuthArcMinutes':5", frequency);
                assertEquals(published, db, 0.015, "azimuth at " + speed + " " + frequency);
            }
        }
    }

    /** What the truth says at a frequency is what a small tone returns with. */
    @ParameterizedTest
    @CsvSource({"25", "55", "1000", "7000", "15000", "19000"})
    void responseOfTheTruthIsWhatReturns(double frequencyHz) {
        String members =
                "'tapeSpeedMmPerS':95.25,'heads':{'gapMicrometres':2,'thicknessMicrometres':1,"
                        + "'spacingLossMicrometres':0.2,'azimuthArcMinutes':3,"
                        + "'bumps':[{'frequencyHz':50,'gainDb':2.5,'q':1.5},"
                        + "{'frequencyHz':90,'gainDb':-1.5}]},"
                        + "'electronics':{'lowerEdgeHz':30,'lowerOrder':2,'upperEdgeHz':17000,"
                        + "'upperOrder':3,'equalisation':{'tapeMicroseconds':70,"
                        + "'replayMicroseconds':120}},'transport':{'speedDeviationPercent':0.7}";
        double[] left =
                Bench.play(Bench.machine(members), 48_000, 4, Bench.sine(frequencyHz, -20))[0];
        double db = Bench.line(left, 48_000, 1, 3.5, frequencyHz * 1.007).levelDb() + 20;
        SteadyTone tone = Bench.run(Bench.machine(members), 48_000, 4).tone(0);
        assertEquals(20 * Math.log10(tone.gain(frequencyHz)), db, 1e-4);
    }

    /**
     * A first-order high-pass at f0: |H|² = 1/(1 + (f0/f)²). With f0 = 50 Hz −3 dB re 1 kHz lies
     * where 1 + (50/f)² = 10^0.3·(1 + 0.0025): f = 50/√(1.9953·1.0025 − 1) = 50.0... computed
     * below. The bilinear transform at 48 kHz shifts it by (π·50/48000)²/3, 4 ppm.
     */
    @Test
    void lowerEdgeOfAHighPassIsItsClosedForm() {
        ResponseTruth truth = response("'electronics':{'lowerEdgeHz':50}");
        double expected = 50 / Math.sqrt(Math.pow(10, 0.3) * (1 + 0.0025) - 1);
        assertEquals(expected, truth.lowerEdgeHz(), 1e-3);
    }

    /**
     * A Butterworth low-pass of order n by the bilinear transform: |H|² = 1/(1 + (tan(πf/F)/tan(π
     * f0/F))^2n).
     */
    @ParameterizedTest
    @CsvSource({"1", "2", "3", "5"})
    void upperEdgeOfALowPassIsItsClosedForm(int order) {
        ResponseTruth truth =
                response("'electronics':{'upperEdgeHz':12000,'upperOrder':" + order + "}");
        double warped = Math.tan(Math.PI * 12_000 / 48_000);
        double atOne = Math.pow(Math.tan(Math.PI * 1000 / 48_000) / warped, 2 * order);
        double ratio = Math.pow(Math.pow(10, 0.3) * (1 + atOne) - 1, 0.5 / order);
        double expected = Math.atan(ratio * warped) / Math.PI * 48_000;
        assertEquals(expected, truth.upperEdgeHz(), 0.01);
    }

    /** A peak has its gain at its centre, re far away, here 1 kHz for a peak at 60 Hz. */
    @Test
    void bumpHasItsGainAtItsCentre() {
        double rest = 0.02; // (1/Q)·(A − 1/A)·60/1000 squared and halved, in dB, is below this
        MachineSpec spec = Bench.machine("'heads':{'bumps':[{'frequencyHz':60,'gainDb':3,'q':2}]}");
        SteadyTone tone = Bench.run(spec, 48_000, 2).tone(0);
        assertEquals(3, 20 * Math.log10(tone.gain(60) / tone.gain(4000)), 1e-3);
        assertEquals(0, 20 * Math.log10(tone.gain(1000) / tone.gain(4000)), rest);
    }

    /**
     * Tape of 120 µs with replay of 70 µs: √((1 + (ω70)²)/(1 + (ω120)²)) re 1 kHz. The filter's
     * finite length averages over some 200 Hz, where the shelf's curvature leaves up to 0.004 dB.
     */
    @Test
    @Source("IEC 60094-1, time constants")
    void wrongEqualisationIsAShelf() {
        MachineSpec spec =
                Bench.machine(
                        "'electronics':{'equalisation':"
                                + "{'tapeMicroseconds':120,'replayMicroseconds':70}}");
        SteadyTone tone = Bench.run(spec, 48_000, 2).tone(0);
        for (double f : new double[] {40, 300, 3150, 10_000, 18_000}) {
            double expected = shelf(f) - shelf(1000);
            assertEquals(expected, 20 * Math.log10(tone.gain(f)), 0.005, "at " + f);
        }
    }

    /** The empty machine returns tones as they are, at 44.1, 48 and 96 kHz. */
    @ParameterizedTest
    @CsvSource({"44100, 20000", "48000, 22000", "48000, 20", "96000, 44000"})
    void emptyMachineIsTransparent(int rateHz, double frequencyHz) {
        double[] left = Bench.play(Bench.machine(""), rateHz, 1, Bench.sine(frequencyHz, 0))[0];
        double worst = 0;
        for (int i = rateHz / 4; i < rateHz * 3 / 4; i++) {
            double expected = Bench.sine(frequencyHz, 0).applyAsDouble((double) i / rateHz);
            worst = Math.max(worst, Math.abs(left[i] - expected));
        }
        assertTrue(worst > 0 && worst < 1e-6 * Bench.REFERENCE_PEAK, "worst " + worst);
    }

    /** Fast tape and a lower rate of the return: what would fold back is left out. */
    @Test
    void nothingFoldsBackFromFastTape() {
        MachineSpec spec = Bench.machine("'transport':{'speedDeviationPercent':10}");
        double[] left = Bench.play(spec, 44_100, 1, Bench.sine(21_000, 0))[0];
        double folded = Bench.line(left, 44_100, 0.2, 0.7, 44_100 - 23_100).peak();
        assertTrue(folded < 1e-6 * Bench.REFERENCE_PEAK, "alias " + folded);
    }

    @Test
    void anEdgeThatIsNotThereIsNull() {
        assertNull(response("").lowerEdgeHz());
    }

    private static double shelf(double frequencyHz) {
        double omega = 2e-6 * Math.PI * frequencyHz;
        return 20 * Math.log10(Math.hypot(1, omega * 70) / Math.hypot(1, omega * 120));
    }

    private static ResponseTruth response(String members) {
        return Bench.run(Bench.machine(members), 48_000, 2).truth().response().get(0);
    }

    private static double atOneKilohertz(ReferenceTable table, int row, String column) {
        for (int i = 0; i < table.size(); i++) {
            if (table.number(i, "speed") == table.number(row, "speed")
                    && table.number(i, "frequency") == 1000) {
                return table.number(i, column);
            }
        }
        throw new IllegalStateException("no row at 1 kHz");
    }

    private static double lossDb(double speed, String member, double frequencyHz) {
        MachineSpec spec =
                Bench.machine("'tapeSpeedMmPerS':" + speed + ",'heads':{" + member + "}");
        return 20 * Math.log10(Bench.run(spec, 96_000, 1).tone(0).gain(frequencyHz));
    }
}
