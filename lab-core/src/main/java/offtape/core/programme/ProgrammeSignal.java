package offtape.core.programme;

import java.util.Arrays;

/**
 * The sound of a programme made from its cue sheet, block by block. Every part begins and ends with
 * a raised-cosine fade so that nothing clicks. Markers are a pair of exponential chirps, falling
 * then rising at the start and the other way round at the end: their place is sharp, and the pair
 * tells an error of place from an error of speed, which a single chirp confuses. The high end comes
 * first because it tells time best, and the first frame is near.
 */
public final class ProgrammeSignal {

    /** Id of the marker at the start. */
    public static final String START_MARKER = "start";

    /** Id of the marker at the end. */
    public static final String END_MARKER = "end";

    /** Length of a marker in seconds. */
    public static final double MARKER_S = 0.5;

    private static final double MARKER_LOW_HZ = 700;
    private static final double MARKER_HIGH_HZ = 6000;
    private static final double FADE_S = 0.01;
    private static final double SWEEP_FADE_IN_S = 0.1;

    private final CueSheet sheet;

    /** The sound of this sheet. */
    public ProgrammeSignal(CueSheet sheet) {
        this.sheet = sheet;
    }

    /**
     * One stretch of the programme.
     *
     * @param startFrame first frame
     * @param count number of frames
     * @return left and right in full-scale units, each of length {@code count}
     */
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[2][count];
        for (Cue cue : sheet.cues()) {
            long from = Math.max(startFrame, cue.startFrame());
            long to = Math.min(startFrame + count, cue.endFrame());
            for (long n = from; n < to; n++) {
                double x = sample(cue, n);
                int i = (int) (n - startFrame);
                if (cue.channels() != ChannelSet.RIGHT) {
                    out[0][i] += x;
                }
                if (cue.channels() != ChannelSet.LEFT) {
                    out[1][i] += x;
                }
            }
        }
        return out;
    }

    private double sample(Cue cue, long frame) {
        long n = frame - cue.startFrame();
        if (cue instanceof Cue.Marker m) {
            return sheet.peakOf(0) * fade(n, m.frames(), FADE_S, FADE_S) * Math.sin(chirp(m, n));
        }
        if (cue instanceof Cue.Tone t) {
            return tone(n, t.frames(), t.frequencyHz(), t.levelDb());
        }
        if (cue instanceof Cue.Sweep s) {
            ExponentialSweep sweep = ExponentialSweep.of(s, sheet.sampleRateHz());
            double fade = fade(n, s.frames(), SWEEP_FADE_IN_S, FADE_S);
            return sheet.peakOf(s.levelDb()) * fade * Math.sin(sweep.phaseRadians(seconds(n)));
        }
        if (cue instanceof Cue.Ladder l) {
            return ladder(l, frame);
        }
        return 0;
    }

    private double ladder(Cue.Ladder ladder, long frame) {
        for (Cue.Step step : ladder.steps()) {
            long n = frame - step.startFrame();
            if (n >= 0 && n < step.frames()) {
                return tone(n, step.frames(), ladder.frequencyHz(), step.levelDb());
            }
        }
        return 0;
    }

    private double tone(long n, long frames, double frequencyHz, double levelDb) {
        double cycles = frequencyHz * n / sheet.sampleRateHz();
        double phase = 2 * Math.PI * (cycles - Math.floor(cycles));
        return sheet.peakOf(levelDb) * fade(n, frames, FADE_S, FADE_S) * Math.sin(phase);
    }

    /** Phase of a marker: out to the far frequency by its middle, and back the same way. */
    private double chirp(Cue.Marker marker, long n) {
        boolean rising = marker.id().equals(END_MARKER);
        double half = seconds(marker.frames()) / 2;
        double t = seconds(n) - half;
        ExponentialSweep arm = new ExponentialSweep(MARKER_LOW_HZ, MARKER_HIGH_HZ, half);
        double there = arm.phaseRadians(rising ? half - Math.abs(t) : Math.abs(t));
        double middle = rising ? arm.phaseRadians(half) : 0;
        return t < 0 == rising ? there : 2 * middle - there;
    }

    private double seconds(long frames) {
        return (double) frames / sheet.sampleRateHz();
    }

    private double fade(long n, long frames, double inSeconds, double outSeconds) {
        double in = ramp((n + 0.5) / (inSeconds * sheet.sampleRateHz()));
        double out = ramp((frames - n - 0.5) / (outSeconds * sheet.sampleRateHz()));
        return in * out;
    }

    private static double ramp(double x) {
        return x >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, x));
    }

    /** The largest sample of a sheet's loudest part, in full-scale units: its highest level. */
    public double peak() {
        double[] levels =
                sheet.cues().stream().mapToDouble(ProgrammeSignal::highestLevelDb).toArray();
        return sheet.peakOf(Arrays.stream(levels).max().orElse(Double.NEGATIVE_INFINITY));
    }

    private static double highestLevelDb(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return t.levelDb();
        }
        if (cue instanceof Cue.Sweep s) {
            return s.levelDb();
        }
        if (cue instanceof Cue.Ladder l) {
            return l.steps().stream().mapToDouble(Cue.Step::levelDb).max().orElseThrow();
        }
        return cue instanceof Cue.Marker ? 0 : Double.NEGATIVE_INFINITY;
    }
}
