package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.CueSheet;
import org.junit.jupiter.api.Test;

class MachineTruthTest {

    private static final String MOVING =
            "'transport':{'speedDeviationPercent':0.5,'components':["
                    + "{'name':'capstan','frequencyHz':8,'peakPercent':0.1}]}";

    /**
     * A line of peak a has the rms a/√2 over whole periods; the mean is the constant part. At 0.5 %
     * 10.05 s of programme last 10 s, 80 periods.
     */
    @Test
    void speedOfASingleLine() {
        SpeedTruth speed = Bench.run(Bench.machine(MOVING), 48_000, 10.05).truth().speed();
        assertEquals(0.5, speed.returnMean(), 1e-9);
        assertEquals(0.5, speed.transportMean(), 1e-9);
        assertEquals(0.1 / Math.sqrt(2), speed.transportRms(), 1e-7);
        assertEquals(speed.transportRms(), speed.returnRms(), 1e-9);
        assertEquals("capstan", speed.components().get(0).name());
        assertEquals(0.1, speed.components().get(0).returnPeakPercent(), 0);
    }

    /**
     * Off-tape 2·|sin(π·8·τ)|/1.005, τ = 30/190.5/1.005 s, to first order in 0.1 %, and a mean of
     * nothing but what the line leaves over: 2a/(2π·8)/20 s, 2e-6.
     */
    @Test
    void offTapeTheCombIsInTheReturn() {
        MachineTruth truth =
                Bench.run(Bench.machine("'mode':'off-tape'," + MOVING), 48_000, 20).truth();
        double comb = 2 * Math.abs(Math.sin(Math.PI * 8 * 30 / 190.5 / 1.005)) / 1.005;
        SpeedTruth speed = truth.speed();
        assertEquals(0.1 * comb, speed.components().get(0).returnPeakPercent(), 2e-6);
        assertEquals(0.1 * comb / Math.sqrt(2), speed.returnRms(), 1e-4);
        assertEquals(0, speed.returnMean(), 4e-4);
        assertEquals(0.5, speed.transportMean(), 4e-4);
        assertEquals(1000 * 30 / 190.5 / 1.005, truth.timing().headDelayMs(), 1e-3);
        assertEquals(truth.timing().headDelayMs(), truth.timing().meanDelayMs(), 1e-3);
    }

    @Test
    void whatAModeCannotKnowIsNull() {
        MachineTruth loopback =
                Bench.run(Bench.machine("'mode':'loopback'," + MOVING), 48_000, 3).truth();
        assertTrue(loopback.speed().components().isEmpty());
        assertEquals(0, loopback.speed().transportRms(), 0);
        assertNull(loopback.timing().headDelayMs());
        MachineTruth passes =
                Bench.run(Bench.machine("'mode':'two-pass'," + MOVING), 48_000, 3).truth();
        assertNull(passes.speed().components().get(0).returnPeakPercent());
        assertNull(passes.timing().meanDelayMs());
    }

    @Test
    void jsonIsWholeAndFinite() throws IOException {
        MachineTruth truth = Bench.run(Bench.machine(MOVING), 48_000, 3).truth();
        String text = truth.toJson();
        JsonNode json = JsonMapper.builder().build().readTree(text);
        assertEquals("offtape-machine-truth", json.path("format").asText());
        assertEquals(2, json.path("response").size());
        assertEquals(6, json.path("distortion").size());
        assertTrue(json.path("noise").get(0).path("unweighted").isNull());
        assertEquals(31, json.path("timeMap").path("returnSeconds").size());
        assertTrue(!text.contains("NaN") && !text.contains("Infinity"));
    }

    /** 1.5 % fast: 2 s of programme last 2/1.015 s, and the rows say so. */
    @Test
    void motionIsWrittenAsRows() throws IOException {
        StringBuilder csv = new StringBuilder();
        Bench.run(Bench.machine("'transport':{'speedDeviationPercent':1.5}"), 48_000, 2)
                .timeMap()
                .writeCsv(csv, 200);
        String[] rows = csv.toString().split("\n");
        assertEquals(1 + 1 + (int) (200 * 2 / 1.015), rows.length);
        assertEquals("0.500000,0.507500000,1.5000000,1.5000000", rows[101]);
    }

    @Test
    void aSheetSetsRatesAndReference() {
        CueSheet sheet = new CueSheet(44_100, 44_100, -18, null, java.util.List.of());
        MachineRun run = SimulatedMachine.of(Bench.machine("")).run(sheet);
        assertEquals(44_100, run.sampleRateHz());
        assertEquals(1.5 * 44_100, run.frames(), 1);
        assertEquals(-18, run.truth().referenceDbfs(), 1e-12);
        assertEquals(-18, run.truth().referenceReturnDbfs().get(0), 1e-9);
    }

    @Test
    void endlessProgrammesAreRefused() {
        SimulatedMachine machine = SimulatedMachine.of(Bench.machine(MOVING));
        UnusableInputException fault =
                assertThrows(
                        UnusableInputException.class,
                        () -> machine.run(48_000, Long.MAX_VALUE, -20, 48_000));
        assertTrue(fault.getMessage().contains("minutes"));
    }
}
