package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.DoubleStream;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.MotionFileSpec;
import offtape.core.machine.spec.RandomBandSpec;
import offtape.reference.TransportMotion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TransportTest {

    @TempDir private Path folder;

    /** By construction of Parseval's theorem the rms of a period is exact and the band sharp. */
    @Test
    void randomFlutterHasItsRmsAndItsBand() {
        BandNoise noise = BandNoise.of(new RandomBandSpec(0.1, 2.0, 50.0), 7, 1600, 1 << 15);
        double power = DoubleStream.of(noise.deviation()).map(x -> x * x).sum() / (1 << 15);
        assertEquals(0.001, Math.sqrt(power), 1e-12);
        Spectrum spectrum = RealFft.ofSize(1 << 15).forward(noise.deviation());
        double outside = 0;
        for (int k = 0; k < spectrum.bins(); k++) {
            double f = k * 1600.0 / (1 << 15);
            outside += f < 1.99 || f > 50.01 ? spectrum.power(k) : 0;
        }
        assertTrue(outside < 1e-20 * power * Math.pow(1 << 15, 2));
    }

    /** Speed is the derivative of position, seen by central differences of 0.1 ms. */
    @Test
    void deviationIsTheSlopeOfThePosition() {
        Motion motion =
                motion(
                        "'transport':{'speedDeviationPercent':0.4,'driftPercentPerMinute':0.2,"
                                + "'components':[{'diameterMm':6.35,'peakPercent':0.1}],"
                                + "'reels':{'supply':{'radiusMm':60,'peakPercent':0.05},"
                                + "'takeUp':{'radiusMm':35,'peakPercent':0.04}},"
                                + "'randomFlutter':{'rmsPercent':0.05,'highHz':60},"
                                + "'motion':{'recorded':'transport-a'}}");
        double h = 1e-4;
        for (double u = -3; u < 30; u += 0.0917) {
            double slope = (motion.position(u + h) - motion.position(u - h)) / (2 * h);
            // h²/6·δ'': below 1e-6 for a line of 60 Hz and 0.1 %.
            assertEquals(1 + motion.deviation(u), slope, 1e-6, "at " + u);
        }
        assertEquals(0, motion.position(0), 0);
    }

    /**
     * A supply pack of 60 mm turns at 190.5/(2π·60) = 0.50532 Hz; after 100 s of 35 µm tape r² =
     * 3600 − 0.035·19050/π = 3387.77, r = 58.2045 mm, 0.52090 Hz. The rate is read from successive
     * upward zeros.
     */
    @Test
    void reelsSpeedUpAsThePackShrinks() {
        Motion motion =
                motion("'transport':{'reels':{'supply':{'radiusMm':60,'peakPercent':0.1}}}");
        assertEquals(0.50532, rateAfter(motion, 0), 5e-4);
        assertEquals(0.52090, rateAfter(motion, 100), 5e-4);
    }

    /** A capstan of 6.35 mm at 190.5 mm/s turns at 190.5/(π·6.35) = 9.5493 Hz. */
    @Test
    void capstansRateComesFromItsDiameter() {
        Motion motion =
                motion("'transport':{'components':[{'diameterMm':6.35,'peakPercent':0.1}]}");
        for (double u = 0; u < 5; u += 0.0123) {
            double expected = 0.001 * Math.sin(190.5 / 6.35 * 2 * u);
            assertEquals(expected, motion.deviation(u), 1e-8);
        }
    }

    /** Between the recorded motion's rows the displacement is minus its lateness, up to a shift. */
    @Test
    void recordedMotionPassesThroughItsRows() {
        TransportMotion recorded = TransportMotion.load("transport-b");
        MeasuredMotion motion = MeasuredMotion.of(new MotionFileSpec(null, "transport-b", 2.0));
        double start = recorded.seconds()[0];
        for (int i = 60; i < 440; i++) {
            double expected = -2e-6 * recorded.lateMicroseconds()[i];
            assertEquals(expected, motion.displacement(recorded.seconds()[i] - start), 1e-12);
        }
    }

    /** At the join neither displacement nor speed jumps, nor does it anywhere else. */
    @Test
    void repeatedMotionHasNoSeam() {
        MeasuredMotion motion = MeasuredMotion.of(new MotionFileSpec(null, "transport-a", 1.0));
        double period = motion.periodSeconds();
        double h = 1e-6;
        for (double u : new double[] {0, period, 3 * period, 0.1 * period / 0.9}) {
            double jump = motion.displacement(u + h) - motion.displacement(u - h);
            assertEquals(2 * h * motion.deviation(u), jump, 1e-10, "displacement at " + u);
            assertEquals(motion.deviation(u - h), motion.deviation(u + h), 2e-6, "speed at " + u);
        }
    }

    @Test
    void motionIsReadFromAFileAndBadRowsAreToldByLine() throws IOException {
        Path csv = folder.resolve("motion.csv");
        StringBuilder rows = new StringBuilder("seconds,late\n");
        for (int i = 0; i < 200; i++) {
            double late = 50 * Math.sin(2 * Math.PI * 1.3 * i / 100);
            rows.append(String.format(Locale.ROOT, "%.3f,%.6f%n", i / 100.0, late));
        }
        Files.writeString(csv, rows);
        MeasuredMotion motion = MeasuredMotion.of(new MotionFileSpec(csv.toString(), null, 1.0));
        // A cubic spline errs by about (ωh)⁴/384 of a sine, here 1e-7; ends apart.
        double expected = -50e-6 * Math.sin(2 * Math.PI * 1.3 * 1.0);
        assertEquals(expected, motion.displacement(1.0), 1e-10);
        Files.writeString(csv, rows + "2.5,NaN\n");
        UnusableInputException fault =
                assertThrows(
                        UnusableInputException.class,
                        () -> MeasuredMotion.of(new MotionFileSpec(csv.toString(), null, 1.0)));
        assertTrue(fault.getMessage().contains("line 202"), fault.getMessage());
    }

    // The motion is tabulated 1600 times a second. Rows closer than that can hold jumps of 0.4 s
    // between points of the table, at all of which the spline is as good as level.
    @Test
    void motionThatJumpsBetweenThePointsOfItsTableIsRefused() throws IOException {
        Path csv = folder.resolve("motion.csv");
        StringBuilder rows = new StringBuilder("seconds,late\n");
        for (int i = 0; i < 20_000; i++) {
            rows.append(
                    String.format(
                            Locale.ROOT,
                            "%.5f,%d%n",
                            i / 100_000.0,
                            i / 5015 % 3 == 2 ? 400_000 : 0));
        }
        Files.writeString(csv, rows);
        MachineSpec machine = Bench.machine("'transport':{'motion':{'csv':'" + csv + "'}}");
        UnusableInputException fault =
                assertThrows(
                        UnusableInputException.class,
                        () -> Transport.motion(machine, Transport.Pass.READ, 0, 1));
        assertTrue(fault.getMessage().contains("half the tape speed"), fault.getMessage());
    }

    @Test
    void motionTooShortToBeRepeatedIsRefused() throws IOException {
        Path csv = folder.resolve("motion.csv");
        StringBuilder rows = new StringBuilder("seconds,late\n");
        for (int i = 0; i < 20; i++) {
            rows.append(i).append("e-300,").append(i % 2).append('\n');
        }
        Files.writeString(csv, rows);
        UnusableInputException fault =
                assertThrows(
                        UnusableInputException.class,
                        () -> MeasuredMotion.of(new MotionFileSpec(csv.toString(), null, 1.0)));
        assertTrue(fault.getMessage().contains("less than 0.1 s"), fault.getMessage());
    }

    @Test
    void passesDifferAndSeedsDiffer() {
        MachineSpec one = Bench.machine("'transport':{'randomFlutter':{'rmsPercent':0.1}}");
        MachineSpec two =
                Bench.machine("'seed':2,'transport':{'randomFlutter':{'rmsPercent':0.1}}");
        double read = Transport.motion(one, Transport.Pass.READ, -1, 5).deviation(2);
        assertEquals(read, Transport.motion(one, Transport.Pass.READ, -1, 5).deviation(2), 0);
        assertNotEquals(read, Transport.motion(one, Transport.Pass.WRITE, -1, 5).deviation(2));
        assertNotEquals(read, Transport.motion(two, Transport.Pass.READ, -1, 5).deviation(2));
    }

    @Test
    void impossibleMotionIsRefused() {
        MachineSpec spec =
                Bench.machine(
                        "'transport':{'randomFlutter':{'rmsPercent':5,'lowHz':400,"
                                + "'highHz':500},'speedDeviationPercent':20,'components':["
                                + "{'frequencyHz':3,'peakPercent':10},{'frequencyHz':5,'peakPercent':10},"
                                + "{'frequencyHz':7,'peakPercent':10}]}");
        UnusableInputException fault =
                assertThrows(UnusableInputException.class, () -> Bench.run(spec, 48_000, 10));
        assertTrue(fault.getMessage().contains("half the tape speed"));
    }

    private static double rateAfter(Motion motion, double seconds) {
        double first = upwardZero(motion, seconds - 1);
        double second = upwardZero(motion, first + 0.5);
        return 1 / (second - first);
    }

    private static double upwardZero(Motion motion, double from) {
        double step = 1e-3;
        double u = from;
        while (!(motion.deviation(u) < 0 && motion.deviation(u + step) >= 0)) {
            u += step;
        }
        double below = -motion.deviation(u);
        return u + step * below / (below + motion.deviation(u + step));
    }

    private static Motion motion(String members) {
        return Transport.motion(Bench.machine(members), Transport.Pass.READ, -10, 140);
    }
}
