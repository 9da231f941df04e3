package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;

/** Ladders through a characteristic that is known, with noise of a seed. */
final class Ladders {

    static final int RATE = 44_100;

    /** Peak of a sine at reference level. */
    static final double REFERENCE = 0.1;

    private final Cue.Tone reference = tone();
    private final Cue.Ladder ladder;
    private final CueSheet sheet;

    /** A ladder whose steps come in the order given. */
    Ladders(ChannelSet channels, double hz, double stepSeconds, double... levelsDb) {
        long frames = Math.round(stepSeconds * RATE);
        long at = 2 * RATE;
        List<Cue.Step> steps = new ArrayList<>();
        for (double level : levelsDb) {
            steps.add(new Cue.Step(at, frames, level));
            at += frames + RATE / 20;
        }
        ladder = new Cue.Ladder("steps", channels, 2 * RATE, at - RATE / 20 - 2 * RATE, hz, steps);
        sheet = new CueSheet(RATE, at, -20, null, List.of(reference, ladder));
    }

    private static Cue.Tone tone() {
        return new Cue.Tone("reference", ChannelSet.BOTH, RATE / 2, RATE, 1000, 0);
    }

    /** The sound as it returns on one channel. */
    double[] sound(DoubleUnaryOperator characteristic, double noise, long seed) {
        double[] x = new double[(int) sheet.frames()];
        add(x, reference.startFrame(), reference.frames(), 1000, 0, characteristic);
        for (Cue.Step s : ladder.steps()) {
            add(x, s.startFrame(), s.frames(), ladder.frequencyHz(), s.levelDb(), characteristic);
        }
        Random random = new Random(seed);
        for (int i = 0; i < x.length; i++) {
            x[i] += noise * random.nextGaussian();
        }
        return x;
    }

    private static void add(
            double[] x, long from, long frames, double hz, double db, DoubleUnaryOperator f) {
        double peak = REFERENCE * Math.pow(10, db / 20);
        for (int i = 0; i < frames; i++) {
            double phase = 2 * Math.PI * hz * i / RATE;
            x[(int) from + i] += f.applyAsDouble(peak * Math.sin(phase));
        }
    }

    /** The steps in the order in which they are recorded. */
    List<Cue.Step> steps() {
        return ladder.steps();
    }

    /** Measures sound as it returned. */
    List<Distortion> measure(double[]... channels) {
        return measure(Leakage.NONE, 1, channels);
    }

    /**
     * Measures sound of which each channel hears something of the other.
     *
     * @param stretch how much longer the return takes than the programme
     */
    List<Distortion> measure(Leakage leakage, double stretch, double[]... channels) {
        MemoryAudio sound = new MemoryAudio("ladder", RATE, channels);
        double seconds = (double) sheet.frames() / RATE;
        Location location =
                new Location(
                        TimeMap.straight(0, stretch, seconds),
                        stretch * seconds,
                        0,
                        0,
                        java.util.Collections.nCopies(channels.length, 1),
                        true,
                        true,
                        0,
                        stretch * seconds,
                        List.of());
        ProgrammeReturn ret = new ProgrammeReturn(new Programme(sheet, sound), sound, location);
        return new LadderMeasure(ret, ReferenceLevels.measure(ret).orElseThrow(), leakage)
                .measure(ladder);
    }
}
