package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import java.util.List;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.TimeMap;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.transport.TransportDescription;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import org.junit.jupiter.api.Test;

/** Five minutes of a simulated machine's own motion, without sound. */
class MachineLinesTest {

    private static final double RATE = 50;
    private static final int SECONDS = 300;

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "seed": 7, "transport": {
              "driftPercentPerMinute": 0.01,
              "components": [{"diameterMm": 40, "peakPercent": 0.06},
                             {"diameterMm": 6.35, "peakPercent": 0.04}],
              "reels": {"supply": {"radiusMm": 70, "peakPercent": 0.08},
                        "takeUp": {"radiusMm": 35, "peakPercent": 0.05},
                        "tapeThicknessMicrometres": 50},
              "randomFlutter": {"rmsPercent": 0.05, "lowHz": 0.3, "highHz": 20}}}
            """;

    private static final String PARTS =
            """
            {"format": "offtape-transport", "version": 1, "tapeSpeedMmPerS": 190.5,
             "capstan": {"diameterMm": 6.35}, "pinchRoller": {"diameterMm": 40},
             "supplyReel": {"hubRadiusMm": 30, "packRadiusMm": 90},
             "takeUpReel": {"hubRadiusMm": 30, "packRadiusMm": 90}}
            """;

    private static double[] modulation() {
        MachineSpec spec = MachineSpec.fromJson(MACHINE);
        TimeMap map =
                SimulatedMachine.of(spec).run(8000, 8000L * (SECONDS + 2), -18, 8000).timeMap();
        double[] x = new double[(int) (SECONDS * RATE)];
        Arrays.setAll(x, i -> 100 * map.returnDeviation(i / RATE));
        double mean = Arrays.stream(x).average().orElseThrow();
        return Arrays.stream(x).map(v -> v - mean).toArray();
    }

    /**
     * r² changes by 0.05·190.5/π = 3.0319 mm² a second: in 300 s from 70 to 63.17 mm and from 35 to
     * 46.21 mm, so 190.5/(2π·r) goes from 0.4331 to 0.4799 Hz and from 0.8663 to 0.6562 Hz.
     */
    @Test
    void reelsAreFollowedAndNamedAmongRollers() {
        Speed speed = Speed.unknown("Motion alone.").withComponents(components(modulation()));
        TransportDescription parts = TransportDescription.fromJson(PARTS);
        List<SpeedComponent> lines = NamedParts.name(speed, parts, null).components();
        assertEquals(
                List.of("supply reel", "pinch roller", "take-up reel", "capstan"),
                lines.stream().map(SpeedComponent::part).toList());
        assertMoves(lines.get(0), 0.4331, 0.4799, 0.08);
        assertMoves(lines.get(2), 0.8663, 0.6562, 0.05);
        assertEquals("Gets faster, as a supply reel does while it empties.", lines.get(0).note());
        assertEquals("Gets slower, as a take-up reel does while it fills.", lines.get(2).note());
        assertNull(lines.get(1).endFrequencyHz());
        assertEquals(0.06, lines.get(1).peakPercent(), 2 * lines.get(1).peakUncertaintyPercent());
    }

    private static void assertMoves(SpeedComponent line, double start, double end, double peak) {
        assertEquals(0, line.frequencyUncertaintyHz(), 6e-4);
        assertEquals(start, line.frequencyHz(), 2 * line.frequencyUncertaintyHz());
        assertEquals(end, line.endFrequencyHz(), 2 * line.frequencyUncertaintyHz());
        assertEquals((end - start) / 5, line.frequencyChangeHzPerMinute(), 1e-4);
        assertEquals(peak, line.peakPercent(), 0.02 * peak);
        assertEquals(peak, line.peakPercent(), 2 * line.peakUncertaintyPercent());
    }

    private static List<SpeedComponent> components(double[] x) {
        SpeedLines lines = new SpeedLines(x, RATE);
        return lines.components(lines.found());
    }
}
