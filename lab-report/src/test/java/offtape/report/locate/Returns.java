package offtape.report.locate;

import static offtape.core.programme.ChannelSet.BOTH;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.SincInterpolator;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammePlan;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.TapeSpeed;

/** A programme, and returns of it whose place and speed are known. */
public final class Returns {

    static final int RATE = 48_000;

    private final double[][] sound;
    private final Programme programme;

    /** Of the brief programme. */
    public static Returns ofBrief() {
        return new Returns(new ProgrammePlan(new TapeSpeed(190.5), RATE, -18, true).sheet());
    }

    /** Of a programme of 16 s that holds one part of each kind. */
    public static Returns ofSmall() {
        List<Cue> cues =
                List.of(
                        new Cue.Marker("start", BOTH, 24_000, 24_000),
                        new Cue.Tone("reference", BOTH, 60_000, 96_000, 1000, 0),
                        new Cue.Tone("high", BOTH, 170_000, 48_000, 10_000, -20),
                        new Cue.Sweep("sweep", BOTH, 230_000, 144_000, 20, 20_000, -20),
                        new Cue.Tone("low", BOTH, 390_000, 48_000, 100, -20),
                        new Cue.Tone("speed", BOTH, 450_000, 288_000, 3150, 0),
                        new Cue.Marker("end", BOTH, 750_000, 24_000));
        return new Returns(new CueSheet(RATE, 790_000, -18, null, cues));
    }

    /** Of any programme. */
    public static Returns of(CueSheet sheet) {
        return new Returns(sheet);
    }

    private Returns(CueSheet sheet) {
        sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        programme = new Programme(sheet, new MemoryAudio("programme", RATE, sound));
    }

    public Programme programme() {
        return programme;
    }

    /** Seconds of the programme. */
    public double seconds() {
        return (double) sound[0].length / RATE;
    }

    /** Samples of the programme, shared. */
    double[][] sound() {
        return sound;
    }

    /**
     * The programme as it returns.
     *
     * @param rate sample rate of the return
     * @param before seconds of other sound before it
     * @param after seconds of other sound after it
     * @param speed tape speed over nominal
     * @param gainLeft gain of the left channel; may be negative or zero
     * @param gainRight gain of the right channel
     */
    public MemoryAudio of(
            int rate,
            double before,
            double after,
            double speed,
            double gainLeft,
            double gainRight) {
        int n = (int) Math.round((before + seconds() / speed + after) * rate);
        double[] left = new double[n];
        double[] right = new double[n];
        Random random = new Random(42);
        for (int i = 0; i < n; i++) {
            left[i] = 1e-4 * random.nextGaussian();
            right[i] = 1e-4 * random.nextGaussian();
        }
        add(left, sound[0], rate, before, speed, gainLeft);
        add(right, sound[1], rate, before, speed, gainRight);
        music(left, right, rate, 0, before - 0.2);
        music(left, right, rate, n - (int) ((after - 0.2) * rate), (double) n / rate);
        return new MemoryAudio("return.wav", rate, left, right);
    }

    private static void add(
            double[] out, double[] in, int rate, double before, double speed, double gain) {
        for (int i = 0; i < out.length && gain != 0; i++) {
            double place = ((double) i / rate - before) * speed * RATE;
            if (place > -0.5 && place < in.length - 0.5) {
                boolean whole = Math.abs(place - Math.rint(place)) < 1e-6;
                out[i] +=
                        gain
                                * (whole
                                        ? in[(int) Math.rint(place)]
                                        : SincInterpolator.at(in, place));
            }
        }
    }

    /** Something like music: a new chord of decaying partials every quarter of a second. */
    private static void music(
            double[] left, double[] right, int rate, int fromFrame, double toSeconds) {
        Random random = new Random(7);
        int to = (int) Math.min(left.length, toSeconds * rate);
        int beat = rate / 4;
        for (int start = Math.max(0, fromFrame); start + beat <= to; start += beat) {
            for (int voice = 0; voice < 4; voice++) {
                double hz = 110 * Math.pow(2, random.nextInt(48) / 12.0);
                double share = random.nextDouble();
                for (int i = 0; i < beat; i++) {
                    double t = (double) i / rate;
                    double x =
                            0.1
                                    * Math.exp(-6 * t)
                                    * (Math.sin(2 * Math.PI * hz * t)
                                            + 0.4 * Math.sin(4 * Math.PI * hz * t)
                                            + 0.1 * random.nextGaussian());
                    left[start + i] += share * x;
                    right[start + i] += (1 - share) * x;
                }
            }
        }
    }
}
