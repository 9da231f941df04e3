package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import org.junit.jupiter.api.Test;

/** Several replays of one recording: what the tape holds stays, what a replay adds is new. */
class ReplayTest {

    private static final String TRANSPORT =
            "'transport':{'speedDeviationPercent':0.2,"
                    + "'components':[{'diameterMm':6.35,'peakPercent':0.1,'phaseDegrees':30}],"
                    + "'reels':{'supply':{'radiusMm':60,'peakPercent':0.05}},"
                    + "'randomFlutter':{'rmsPercent':0.05,'highHz':60}}";

    private static MachineSpec machine(String members) {
        return Bench.machine("'mode':'two-pass'," + members);
    }

    private static double[] deviations(MachineSpec spec, Transport.Pass pass) {
        Motion motion = Transport.motion(spec, pass, -1, 31);
        return IntStream.range(0, 3000).mapToDouble(i -> motion.deviation(i / 100.0)).toArray();
    }

    /** Mean of the product of two deviations about their means over the product of their rms. */
    private static double likeness(double[] a, double[] b) {
        return covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b));
    }

    private static double covariance(double[] a, double[] b) {
        double meanA = IntStream.range(0, a.length).mapToDouble(i -> a[i]).average().orElse(0);
        double meanB = IntStream.range(0, b.length).mapToDouble(i -> b[i]).average().orElse(0);
        return IntStream.range(0, a.length)
                .mapToDouble(i -> (a[i] - meanA) * (b[i] - meanB))
                .average()
                .orElse(0);
    }

    @Test
    void whatWroteTheTapeIsTheSameInEveryReplay() {
        MachineSpec spec = machine(TRANSPORT);
        double[] first = deviations(spec, Transport.Pass.WRITE);
        double[] third = deviations(spec.withReplay(3), Transport.Pass.WRITE);
        assertEquals(1, likeness(first, third), 1e-12);
        assertEquals(first[1234], third[1234], 0);
    }

    /**
     * Random flutter from 0.5 to 60 Hz over 30 s has some 2·60·30 independent values, so that two
     * draws are alike by ± 0.02; the capstan's line is drawn anew in phase and adds its cosine.
     */
    @Test
    void randomFlutterOfReplaysIsDrawnAnew() {
        MachineSpec spec = machine("'transport':{'randomFlutter':{'rmsPercent':0.05,'highHz':60}}");
        double[] first = deviations(spec, Transport.Pass.READ);
        double[] second = deviations(spec.withReplay(2), Transport.Pass.READ);
        double[] third = deviations(spec.withReplay(3), Transport.Pass.READ);
        assertEquals(0, likeness(first, second), 0.1);
        assertEquals(0, likeness(first, third), 0.1);
        assertEquals(0, likeness(second, third), 0.1);
    }

    /** A reel's angle goes with the length of tape that has left it. */
    @Test
    void reelsStandAlikeInEveryReplay() {
        MachineSpec spec =
                machine("'transport':{'reels':{'supply':{'radiusMm':60," + "'peakPercent':0.05}}}");
        double[] first = deviations(spec, Transport.Pass.READ);
        double[] second = deviations(spec.withReplay(2), Transport.Pass.READ);
        assertEquals(1, likeness(first, second), 1e-12);
    }

    @Test
    void theSpeedOfTheMachineStays() {
        MachineSpec spec = machine("'transport':{'speedDeviationPercent':0.2}");
        assertEquals(0.002, deviations(spec.withReplay(7), Transport.Pass.READ)[100], 1e-12);
    }

    @Test
    void replaysAreCountedFromOne() {
        MachineSpec spec = machine(TRANSPORT);
        assertEquals(1, spec.replay());
        assertThrows(UnusableInputException.class, () -> spec.withReplay(0));
        assertThrows(UnusableInputException.class, () -> machine("'replay':1001"));
    }

    /** With both given, a return's deviation is v_read/v_write − 1. */
    @Test
    void theTruthTellsBothParts() {
        MachineRun run = SimulatedMachine.of(machine(TRANSPORT)).run(8000, 80_000, -18, 8000);
        for (double t = 0.5; t < 9; t += 0.37) {
            double heard = run.timeMap().returnDeviation(t);
            double read = run.timeMap().transportDeviation(t);
            double written = run.timeMap().writtenDeviation(t);
            assertEquals((1 + read) / (1 + written) - 1, heard, 1e-12);
        }
        // A line of 0.1 %, a reel of 0.05 % and random flutter of 0.05 % rms:
        // sqrt(0.1²/2 + 0.05²/2 + 0.05²) = 0.0935 %; ten seconds hold it within some per cent.
        assertEquals(0.0935, run.truth().speed().writtenRms(), 0.01);
    }
}
