package offtape.report.benchmark;

import java.nio.file.Path;
import offtape.core.output.OutputFolder;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammePlan;
import offtape.core.programme.ProgrammeWriter;
import offtape.core.unit.TapeSpeed;

/**
 * Writes the standard programme with every tone, step and silence lengthened alike, and the pauses
 * too, until the whole lasts so many minutes. Markers and sweeps keep their length, since each is
 * found or measured by a transform of its whole. Arguments: folder, minutes.
 */
final class LongProgramme {

    private static final TapeSpeed SPEED = new TapeSpeed(190.5);
    private static final int RATE = 48_000;

    private final double factor;

    private LongProgramme(double factor) {
        this.factor = factor;
    }

    public static void main(String[] args) {
        CueSheet standard =
                new ProgrammePlan(SPEED, RATE, ProgrammePlan.DEFAULT_REFERENCE_DBFS, false).sheet();
        double minutes = standard.seconds(standard.frames()) / 60;
        LongProgramme lengthened = new LongProgramme(Double.parseDouble(args[1]) / minutes);
        try (OutputFolder folder = OutputFolder.open(Path.of(args[0]), false)) {
            ProgrammeWriter.write(lengthened.of(standard), folder);
            folder.commit();
        }
    }

    private CueSheet of(CueSheet sheet) {
        return new CueSheet(
                sheet.sampleRateHz(),
                longer(sheet.frames()),
                sheet.referenceDbfs(),
                sheet.tapeSpeedMmPerS(),
                sheet.cues().stream().map(this::longer).toList());
    }

    private long longer(long frames) {
        return Math.round(factor * frames);
    }

    // patterns over sealed types are not in Java 17
    private Cue longer(Cue cue) {
        long start = longer(cue.startFrame());
        if (cue instanceof Cue.Tone c) {
            return new Cue.Tone(
                    c.id(), c.channels(), start, longer(c.frames()), c.frequencyHz(), c.levelDb());
        }
        if (cue instanceof Cue.Sweep c) {
            return new Cue.Sweep(
                    c.id(), c.channels(), start, c.frames(), c.startHz(), c.endHz(), c.levelDb());
        }
        if (cue instanceof Cue.Ladder c) {
            return new Cue.Ladder(
                    c.id(),
                    c.channels(),
                    start,
                    longer(c.frames()),
                    c.frequencyHz(),
                    c.steps().stream()
                            .map(
                                    s ->
                                            new Cue.Step(
                                                    longer(s.startFrame()),
                                                    longer(s.frames()),
                                                    s.levelDb()))
                            .toList());
        }
        if (cue instanceof Cue.Silence c) {
            return new Cue.Silence(c.id(), c.channels(), start, longer(c.frames()));
        }
        return new Cue.Marker(cue.id(), cue.channels(), start, cue.frames());
    }
}
