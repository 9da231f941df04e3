package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.transport.CaptureMode;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From the sound of simulated machines with three heads to the transport's own figures. */
@Tag("study")
class OffTapeTest {

    private static final int RATE = 16_000;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    26L * RATE,
                    -18,
                    null,
                    List.of(
                            new Cue.Marker("start", ChannelSet.BOTH, RATE / 2, RATE / 2),
                            new Cue.Tone("speed", ChannelSet.BOTH, 2 * RATE, 22L * RATE, 3150, 0),
                            new Cue.Marker("end", ChannelSet.BOTH, 25L * RATE, RATE / 2)));

    /**
     * Transport figures within 5 % of the reading: weighted rms, whose truth is computed in the
     * frequency domain from the machine's exact motion. Nobody says how far apart the heads are; a
     * recorder answers 12 ms late.
     */
    @ParameterizedTest
    @CsvSource({"28.5, 190.5, 1", "33, 95.25, 2", "42, 381, 3"})
    void theTransportIsReadFromItsReturn(double spacingMm, double mmPerS, int seed) {
        MachineSpec spec =
                MachineSpec.fromJson(
                        """
                        {"format": "offtape-machine", "version": 1, "seed": %d, "mode": "off-tape",
                         "tapeSpeedMmPerS": %s, "hiss": {"levelDb": -58},
                         "heads": {"spacingMm": %s},
                         "transport": {
                           "components": [{"frequencyHz": 9.55, "peakPercent": 0.05},
                                          {"frequencyHz": 2.7, "peakPercent": 0.04}],
                           "randomFlutter": {"rmsPercent": 0.08, "lowHz": 0.5, "highHz": 120}},
                         "recorder": {"delaySamples": 192}}
                        """
                                .formatted(seed, mmPerS, spacingMm));
        MachineRun run = SimulatedMachine.of(spec).run(SHEET);
        Results results = measured(run, mmPerS);
        TransportSpeed own = results.speed().transport();
        double truth = DeviationTruth.weightedRms(DeviationTruth.ownOverSpeedTone(run, SHEET));
        assertEquals(truth, own.weightedRms().value(), 0.05 * truth);
        assertEquals(truth, own.weightedRms().value(), own.weightedRms().uncertainty());
        assertEquals(
                1000 * spacingMm / mmPerS,
                own.headDelay().value(),
                1.5 * own.headDelay().uncertainty());
        double heard = results.speed().weightedRms().value();
        assertTrue(Math.abs(heard / truth - 1) > 0.1, "heard " + heard + ", own " + truth);
        SpeedComponent line = own.components().get(0);
        assertEquals(9.55, line.frequencyHz(), 1.5 * line.frequencyUncertaintyHz());
        assertEquals(0.05, line.peakPercent(), 1.5 * line.peakUncertaintyPercent());
    }

    private static Results measured(MachineRun run, double mmPerS) {
        double[][] sound = new ProgrammeSignal(SHEET).read(0, (int) SHEET.frames());
        Programme programme = new Programme(SHEET, new MemoryAudio("p.wav", RATE, sound));
        double[][] out = PlayedMachine.sound(run, programme.audio());
        Session session = new Session(null, null, mmPerS, null, "", null, "", "");
        MemoryAudio recording = new MemoryAudio("r.wav", RATE, out[0], out[1]);
        return Measurement.run(
                programme, recording, session, Capture.of(CaptureMode.OFF_TAPE), List.of());
    }
}
