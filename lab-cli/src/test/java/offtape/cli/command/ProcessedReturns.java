package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.output.OutputFolder;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.programme.ProgrammeWriter;

/**
 * One return of a simulated machine, and what becomes of it where something else was left on in the
 * path. The programme has two sweeps and two ladders and lasts 26 s.
 */
final class ProcessedReturns {

    private static final int RATE = Mini.RATE;
    private static final double REFERENCE_DBFS = -18;
    private static final double[] MID_DB = {-20, -14, -8, -4, 0, 4, 8, 11, 14};
    private static final double[] HIGH_DB = {-20, -18, -16, -14, -12, -10, -8, -6, -4, -2, 0, 2, 4};

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "seed": 12, "mode": "reference-tape",
             "transport": {"speedDeviationPercent": 0.3,
               "components": [{"name": "capstan", "frequencyHz": 9.5, "peakPercent": 0.05}]},
             "saturation": {"levelAtK3ThreePercentDb": 8, "emphasisMicroseconds": 50},
             "electronics": {"lowerEdgeHz": 25, "upperEdgeHz": 21000},
             "hiss": {"levelDb": -58}}
            """;

    private final Path programme;
    private final double[][] returned;
    private final Map<String, Function<Lab, Path>> all = new TreeMap<>();

    ProcessedReturns(Lab lab) {
        programme = lab.path("trial");
        try (OutputFolder out = OutputFolder.open(programme, false)) {
            ProgrammeWriter.write(sheet(1), out);
            out.commit();
        }
        Path machine = lab.file("trial.json", MACHINE);
        Path wav = lab.path("trial-return.wav");
        Tool.Outcome played =
                Tool.run("simulate", "--programme", programme, "--machine", machine, "--out", wav);
        if (played.code() != 0) {
            throw new IllegalStateException(played.err());
        }
        try (AudioFile sound = AudioFiles.open(wav)) {
            returned = sound.read(0, (int) sound.frames());
        }
        put("as-it-came", x -> x);
        put("limiter", x -> levelled(x, 0, e -> Math.min(1, 0.14 / e)));
        put("lossy", ProcessedReturns::coded);
        put(
                "nr-recording",
                x -> levelled(x, 1, e -> Math.pow(10, 10 * Math.pow(quietness(e), 1.2) / 20)));
        put(
                "nr-replay",
                x -> levelled(x, 1, e -> Math.pow(10, -10 * Math.pow(quietness(e), 1.2) / 20)));
        put("equaliser", ProcessedReturns::lifted);
        all.put("stretched", l -> l.wav("stretched.wav", stretched()));
    }

    Path programme() {
        return programme;
    }

    /** Names and what makes their files. */
    Map<String, Function<Lab, Path>> all() {
        return all;
    }

    private void put(String name, UnaryOperator<double[]> change) {
        all.put(
                name,
                l ->
                        l.wav(
                                name + ".wav",
                                Arrays.stream(returned).map(change).toArray(double[][]::new)));
    }

    /** The programme with all times longer by a factor, and all frequencies as they are. */
    private static CueSheet sheet(double longer) {
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at(0.3 * longer), at(0.5 * longer)));
        cues.add(tone("reference", 1.1 * longer, 1.2 * longer, 1000));
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at(2.6 * longer), at(1.5 * longer)));
        cues.add(sweep("sweep-low", 4.4 * longer, 3.5 * longer, -20));
        cues.add(sweep("sweep-reference", 8.2 * longer, 3.5 * longer, 0));
        cues.add(ladder("ladder-mid", 12 * longer, longer, 1000, MID_DB));
        cues.add(ladder("ladder-high", 16 * longer, longer, 10_000, HIGH_DB));
        cues.add(tone("speed", 21.5 * longer, 4 * longer, 3150));
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at(25.7 * longer), at(0.5 * longer)));
        return new CueSheet(RATE, at(26.4 * longer), REFERENCE_DBFS, 190.5, cues);
    }

    private static long at(double seconds) {
        return Math.round(seconds * RATE);
    }

    private static Cue tone(String id, double from, double seconds, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, at(from), at(seconds), hz, 0);
    }

    private static Cue sweep(String id, double from, double seconds, double levelDb) {
        return new Cue.Sweep(id, ChannelSet.BOTH, at(from), at(seconds), 16, 22_000, levelDb);
    }

    private static Cue ladder(String id, double from, double longer, double hz, double[] levelsDb) {
        List<Cue.Step> steps = new ArrayList<>();
        for (double db : levelsDb) {
            double start = from + 0.4 * longer * steps.size();
            steps.add(new Cue.Step(at(start), at(0.3 * longer), db));
        }
        double seconds = (0.4 * levelsDb.length - 0.1) * longer;
        return new Cue.Ladder(id, ChannelSet.BOTH, at(from), at(seconds), hz, steps);
    }

    /** What a workstation would make of the programme that keeps its pitch, 2 % longer. */
    private static double[][] stretched() {
        CueSheet longer = sheet(1.02);
        return new ProgrammeSignal(longer).read(0, (int) longer.frames());
    }

    /** How far a level lies under the reference: 0 there and above, 1 from 40 dB below on. */
    private static double quietness(double peak) {
        double db = 20 * Math.log10(Math.max(1e-6, peak)) - REFERENCE_DBFS;
        return Math.max(0, Math.min(1, -db / 40));
    }

    private interface Law {
        double gain(double peak);
    }

    /**
     * Sound whose gain follows its level, up within a millisecond and down within a fifth of a
     * second.
     *
     * @param highs 0 for all of the sound, 1 for what lies above 1500 Hz only
     */
    private static double[] levelled(double[] x, int highs, Law law) {
        double[] y = new double[x.length];
        double pole = Math.exp(-2 * Math.PI * 1500 / RATE);
        double up = Math.exp(-1.0 / (0.001 * RATE));
        double down = Math.exp(-1.0 / (0.2 * RATE));
        double low = 0;
        double level = 0;
        for (int i = 0; i < x.length; i++) {
            low = pole * low + (1 - pole) * x[i];
            double part = highs == 0 ? x[i] : x[i] - low;
            double size = Math.abs(part);
            double keep = size > level ? up : down;
            level = keep * level + (1 - keep) * size;
            y[i] = x[i] + part * (law.gain(Math.max(1e-9, level)) - 1);
        }
        return y;
    }

    /** A bell of 5 dB at 2.5 kHz, Q 1.4, as a biquad of the usual bilinear kind. */
    private static double[] lifted(double[] x) {
        double a = Math.pow(10, 5.0 / 40);
        double w = 2 * Math.PI * 2500 / RATE;
        double alpha = Math.sin(w) / (2 * 1.4);
        double[] b = {1 + alpha * a, -2 * Math.cos(w), 1 - alpha * a};
        double[] d = {1 + alpha / a, -2 * Math.cos(w), 1 - alpha / a};
        double[] y = new double[x.length];
        for (int i = 2; i < x.length; i++) {
            double in = b[0] * x[i] + b[1] * x[i - 1] + b[2] * x[i - 2];
            y[i] = (in - d[1] * y[i - 1] - d[2] * y[i - 2]) / d[0];
        }
        return y;
    }

    /**
     * A coder of the usual plan: overlapping transforms, nothing above 16 kHz, and each band of the
     * others rounded to a step of its own level.
     */
    private static double[] coded(double[] x) {
        int n = 2048;
        int band = 16;
        int last = (int) (16_000.0 * n / RATE);
        RealFft fft = RealFft.ofSize(n);
        double[] y = new double[x.length];
        double[] piece = new double[n];
        double[] window = new double[n];
        Arrays.setAll(window, i -> Math.sin(Math.PI * (i + 0.5) / n));
        for (int from = 0; from + n <= x.length; from += n / 2) {
            for (int i = 0; i < n; i++) {
                piece[i] = window[i] * x[from + i];
            }
            Spectrum heard = fft.forward(piece);
            double[] re = new double[n / 2 + 1];
            double[] im = new double[n / 2 + 1];
            for (int k = 0; k < last; k += band) {
                double power = 0;
                for (int j = k; j < Math.min(last, k + band); j++) {
                    power += heard.power(j) / band;
                }
                double step = Math.max(1e-12, Math.sqrt(power) / 3);
                for (int j = k; j < Math.min(last, k + band); j++) {
                    re[j] = step * Math.rint(heard.re(j) / step);
                    im[j] = step * Math.rint(heard.im(j) / step);
                }
            }
            double[] back = fft.inverse(Spectrum.of(n, re, im));
            for (int i = 0; i < n; i++) {
                y[from + i] += window[i] * back[i];
            }
        }
        return y;
    }
}
