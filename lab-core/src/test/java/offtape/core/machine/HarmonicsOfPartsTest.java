package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A part that speeds and slows the tape several times a turn. */
class HarmonicsOfPartsTest {

    private static final String ROLLER =
            "'transport':{'components':[{'name':'roller','frequencyHz':2,'peakPercent':0.2,"
                    + "'phaseDegrees':90,'harmonics':[1,0.5,0,0.25]}]}";

    /**
     * 0.2 %·(sin θ + 0.5·sin 2θ + 0.25·sin 4θ), θ = 4πt + π/2: at t = 0 0.2 % + 0 + 0; at t = 1/16,
     * θ = 3π/4, 0.2 %·(√½ − 0.5 + 0).
     */
    @Test
    void multiplesAddUpInTheirPhase() {
        Motion motion = Transport.motion(Bench.machine(ROLLER), Transport.Pass.READ, -1, 10);
        assertEquals(0.002, motion.deviation(0), 1e-8);
        assertEquals(0.002 * (Math.sqrt(0.5) - 0.5), motion.deviation(1 / 16.0), 1e-8);
        double h = 1e-4;
        for (double u = 0.5; u < 3; u += 0.0917) {
            double slope = (motion.position(u + h) - motion.position(u - h)) / (2 * h);
            // h²/6·δ'': below 3e-8 for these lines.
            assertEquals(1 + motion.deviation(u), slope, 1e-7, "at " + u);
        }
    }

    /** The truth has 2, 4 and 8 Hz; rms 0.2 %·√((1 + 0.25 + 0.0625)/2) over whole turns. */
    @Test
    void theTruthHasEachMultiple() {
        SpeedTruth truth = Bench.run(Bench.machine(ROLLER), 48_000, 10).truth().speed();
        List<SpeedTruth.Component> lines = truth.components();
        assertEquals(
                List.of(2.0, 4.0, 8.0),
                lines.stream().map(SpeedTruth.Component::frequencyHz).toList());
        assertEquals(0.05, lines.get(2).returnPeakPercent(), 1e-15);
        assertEquals("roller", lines.get(1).name());
        assertEquals(0.2 * Math.sqrt(1.3125 / 2), truth.transportRms(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[1,-1]", "[1,11]", "[1,null]", "[1,1,1]"})
    void whatCannotBeIsRefused(String harmonics) {
        assertThrows(
                UnusableInputException.class,
                () ->
                        Bench.machine(
                                "'transport':{'components':[{'frequencyHz':200,'peakPercent':0.1,"
                                        + "'harmonics':"
                                        + harmonics
                                        + "}]}"));
    }
}
