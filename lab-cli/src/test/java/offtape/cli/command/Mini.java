package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.core.output.OutputFolder;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.programme.ProgrammeWriter;

/** A programme of 22 s with one part of each kind, as somebody might write it by hand. */
final class Mini {

    static final int RATE = 48_000;

    private static final double[] LADDER_DB = {-20, -8, 0, 4, 8, 10, 12, 14};

    private final int rate;

    private Mini(int rate) {
        this.rate = rate;
    }

    static CueSheet sheet() {
        return new Mini(RATE).atItsRate();
    }

    private CueSheet atItsRate() {
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at(0.3), at(0.5)));
        cues.add(tone("reference", ChannelSet.BOTH, 1.1, 1.2, 1000, 0));
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at(2.6), at(1.5)));
        cues.add(new Cue.Sweep("sweep-low", ChannelSet.BOTH, at(4.4), at(4), 16, 22_000, -20));
        List<Cue.Step> steps = new ArrayList<>();
        for (double level : LADDER_DB) {
            steps.add(new Cue.Step(at(8.7 + 0.4 * steps.size()), at(0.3), level));
        }
        cues.add(new Cue.Ladder("ladder-mid", ChannelSet.BOTH, at(8.7), at(3.1), 1000, steps));
        cues.add(tone("left-only", ChannelSet.LEFT, 12.1, 0.7, 1000, 0));
        cues.add(tone("right-only", ChannelSet.RIGHT, 13.1, 0.7, 1000, 0));
        cues.add(tone("check-1000", ChannelSet.BOTH, 14.1, 0.4, 1000, -20));
        cues.add(tone("check-6300", ChannelSet.BOTH, 14.7, 0.4, 6300, -20));
        cues.add(tone("speed", ChannelSet.BOTH, 15.2, 6.2, 3150, 0));
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at(21.6), at(0.5)));
        return new CueSheet(rate, at(22.3), -18, 190.5, cues);
    }

    private Cue tone(
            String id, ChannelSet on, double from, double seconds, double hz, double levelDb) {
        return new Cue.Tone(id, on, at(from), at(seconds), hz, levelDb);
    }

    private long at(double seconds) {
        return Math.round(seconds * rate);
    }

    /** Its sound, left and right. */
    static double[][] sound() {
        return sound(RATE);
    }

    /** The same sound at another rate: every part is given by a formula in seconds. */
    static double[][] sound(int rate) {
        CueSheet sheet = new Mini(rate).atItsRate();
        return new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
    }

    /** Writes its folder. */
    static Path write(Path folder) {
        try (OutputFolder out = OutputFolder.open(folder, false)) {
            ProgrammeWriter.write(sheet(), out);
            out.commit();
        }
        return folder;
    }
}
