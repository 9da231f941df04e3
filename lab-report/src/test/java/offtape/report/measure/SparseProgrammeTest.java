package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
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
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.Results;
import offtape.report.result.Session;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A programme made elsewhere need not hold every part: no tone but a ladder, no silence, no tone on
 * one channel alone. What the rest can tell is told; what it cannot has a reason.
 */
class SparseProgrammeTest {

    private static final int RATE = 48_000;

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1,
             "transport": {"speedDeviationPercent": -0.7},
             "electronics": {"upperEdgeHz": 15000, "lowerEdgeHz": 30,
                             "right": {"replayGainDb": -1.5}},
             "crosstalk": {"leftToRightDb": -42, "rightToLeftDb": -47},
             "hiss": {"levelDb": -58}}
            """;

    private static Results results;
    private static Results exchanged;
    private static MachineRun run;

    @BeforeAll
    static void measure() {
        CueSheet sheet = sheet();
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        Programme programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        run = SimulatedMachine.of(MachineSpec.fromJson(MACHINE)).run(sheet);
        double[][] out = PlayedMachine.sound(run, programme.audio());
        results = measured(programme, out[0], out[1]);
        exchanged = measured(programme, out[1], out[0]);
    }

    private static Results measured(Programme programme, double[] left, double[] right) {
        Session session = new Session(null, null, null, "reference-tape", "", null, "", "");
        MemoryAudio recording = new MemoryAudio("r.wav", RATE, left, right);
        return Measurement.run(
                programme, recording, session, Capture.of(CaptureMode.REFERENCE_TAPE), List.of());
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        long at = RATE / 2;
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at, RATE / 2));
        at += RATE;
        List<Cue.Step> steps =
                List.of(new Cue.Step(at, RATE, -10), new Cue.Step(at + RATE, RATE, 0));
        cues.add(new Cue.Ladder("steps", ChannelSet.BOTH, at, 2 * RATE, 1000, steps));
        at += 3 * RATE;
        for (ChannelSet set : ChannelSet.values()) {
            cues.add(new Cue.Sweep("sweep-" + set.key(), set, at, 3 * RATE, 20, 20_000, -10));
            at += 4L * RATE;
        }
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at, RATE / 2));
        return new CueSheet(RATE, at + RATE, -18, null, cues);
    }

    /** The machine's own truth; allowances as in the accuracy table. */
    @Test
    void crosstalkIsReadFromSweepsOnOneChannel() {
        var truth = run.truth().channels();
        double there = results.channels().crosstalkLeftToRight().value();
        double back = results.channels().crosstalkRightToLeft().value();
        assertEquals(truth.crosstalkLeftToRight(), there, 0.5);
        assertEquals(truth.crosstalkRightToLeft(), back, 0.5);
    }

    @Test
    void theReferenceIsTakenFromTheLadder() {
        double balance = results.channels().balance().value();
        assertEquals(run.truth().channels().balance(), balance, 0.03);
    }

    @Test
    void theResponseIsThere() {
        assertEquals(2, results.response().size());
        double edge = results.response().get(0).upperEdge().value();
        assertEquals(run.truth().response().get(0).upperEdgeHz(), edge, 0.02 * edge);
    }

    @Test
    void whatIsMissingHasAReason() {
        assertFalse(results.speed().deviation().isKnown());
        assertFalse(results.noise().get(0).aWeighted().isKnown());
    }

    /** What arrives on the other channel then is the signal itself and must not be taken out. */
    @Test
    void exchangedChannelsAreNamedAndLeaveTheResponseAlone() {
        assertTrue(exchanged.health().stream().anyMatch(n -> n.code().equals("swapped-channels")));
        assertTrue(results.health().stream().noneMatch(n -> n.code().equals("swapped-channels")));
        double edge = run.truth().response().get(1).upperEdgeHz();
        double found = exchanged.response().get(0).upperEdge().value();
        assertEquals(edge, found, 0.02 * edge);
    }

    /** Total distortion holds each harmonic, also where noise is taken out of all of them. */
    @Test
    void totalDistortionIsNotLessThanAPartOfIt() {
        for (Distortion ladder : results.distortion()) {
            for (LadderStep step : ladder.steps()) {
                double parts = Math.hypot(orZero(step.k2Percent()), orZero(step.k3Percent()));
                assertTrue(orZero(step.thdPercent()) >= parts * (1 - 1e-12), step.toString());
            }
        }
    }

    private static double orZero(Double percent) {
        return percent == null ? 0 : percent;
    }
}
