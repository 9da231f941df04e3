package offtape.report.apply.correct;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFolder;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.programme.ProgrammeWriter;
import offtape.report.measure.Measurement;
import offtape.report.measure.PlayedMachine;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** A simulated machine measured with a short programme, to be corrected and tried. */
final class TriedMachine {

    private static final int RATE_HZ = 48_000;
    private static final double GAP_S = 0.3;

    private final MachineSpec spec;
    private final Path programme;
    private final Results results;

    private TriedMachine(MachineSpec spec, Path programme, Results results) {
        this.spec = spec;
        this.programme = programme;
        this.results = results;
    }

    /**
     * Measures a machine.
     *
     * @param whole whether with ladders and a speed tone, without which all goes faster
     * @param folder an empty one, for the programme
     */
    static TriedMachine of(MachineSpec spec, boolean whole, Path folder) {
        Path place = folder.resolve("programme");
        try (OutputFolder out = OutputFolder.open(place, false)) {
            ProgrammeWriter.write(sheet(whole), out);
            out.commit();
        }
        try (Programme sound = ProgrammeFolder.open(place)) {
            Session session =
                    new Session("Bench", null, spec.tapeSpeedMmPerS(), null, "", null, "", "");
            Results results =
                    Measurement.run(
                            sound,
                            played(spec, sound),
                            session,
                            Capture.of(spec.mode()),
                            List.of());
            return new TriedMachine(spec, place, results);
        }
    }

    Results results() {
        return results;
    }

    /** The correction that is wanted, tried on the same machine. */
    Correction tried(CorrectionWish wish) {
        Corrector corrector = new Corrector(results, "session", wish);
        Correction correction = corrector.correction(List.of());
        try (Programme sound = ProgrammeFolder.open(programme)) {
            return correction.withVerification(
                    corrector.verification(correction, sound, spec, "machine.json"));
        }
    }

    private static AudioSource played(MachineSpec spec, Programme programme) {
        MachineRun run = SimulatedMachine.of(spec).run(programme.sheet());
        double[][] heard = PlayedMachine.sound(run, programme.audio());
        return new MemoryAudio("return", RATE_HZ, heard);
    }

    /** Each kind of part that a correction is read from, once and short. */
    private static CueSheet sheet(boolean whole) {
        List<Cue> cues = new ArrayList<>();
        long at = frames(0.02);
        at = marker(cues, ProgrammeSignal.START_MARKER, at);
        at = tone(cues, "reference", at, 2, 1000);
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, frames(3)));
        at += frames(3 + GAP_S);
        cues.add(new Cue.Sweep("sweep", ChannelSet.BOTH, at, frames(5), 16, 22_000, -20));
        at += frames(5 + GAP_S);
        if (whole) {
            at = ladder(cues, "ladder", at, 1000, 0.3);
            at = ladder(cues, "ladder-high", at, 10_000, 0.15);
            at = tone(cues, "speed", at, 5, 3150);
        }
        at = marker(cues, ProgrammeSignal.END_MARKER, at);
        return new CueSheet(RATE_HZ, at, -18.0, 190.5, cues);
    }

    private static long marker(List<Cue> cues, String id, long at) {
        cues.add(new Cue.Marker(id, ChannelSet.BOTH, at, frames(ProgrammeSignal.MARKER_S)));
        return at + frames(ProgrammeSignal.MARKER_S + GAP_S);
    }

    private static long tone(List<Cue> cues, String id, long at, double seconds, double hz) {
        cues.add(new Cue.Tone(id, ChannelSet.BOTH, at, frames(seconds), hz, 0));
        return at + frames(seconds + GAP_S);
    }

    private static long ladder(List<Cue> cues, String id, long start, double hz, double seconds) {
        Cue.Step[] steps = new Cue.Step[12];
        Arrays.setAll(
                steps,
                i -> new Cue.Step(start + i * frames(seconds + 0.1), frames(seconds), -8 + 2 * i));
        Cue.Step last = steps[steps.length - 1];
        long end = last.startFrame() + last.frames();
        cues.add(new Cue.Ladder(id, ChannelSet.BOTH, start, end - start, hz, Arrays.asList(steps)));
        return end + frames(GAP_S);
    }

    private static long frames(double seconds) {
        return Math.round(seconds * RATE_HZ);
    }
}
