package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Finds the longest steady tone in a recording: block by block the strongest line and its share of
 * the power, then the longest run of blocks in which one line rules.
 */
final class ToneSearch {

    /**
     * A steady tone.
     *
     * @param fromSeconds start
     * @param toSeconds end
     * @param frequencyHz its frequency, within about 0.1 %
     */
    record Found(double fromSeconds, double toSeconds, double frequencyHz) {

        double seconds() {
            return toSeconds - fromSeconds;
        }
    }

    private static final double BLOCK_S = 0.1;
    private static final double LOWEST_HZ = 280;
    private static final double HIGHEST_HZ = 13_000;

    /** Share of a block's power that its line must have. */
    private static final double PURE = 0.6;

    /** Mean square under which a block is silent (−80 dBFS sine). */
    private static final double SILENT = 5e-9;

    private static final double SAME_TONE = 0.05;

    /** Blocks in a row that may be spoilt without ending a tone: a dropout, a click. */
    private static final int SPOILT = 3;

    private ToneSearch() {}

    private record Block(double hz, double purity, double power) {

        boolean isTone() {
            return purity > PURE && power > SILENT;
        }
    }

    /** The longest of the tones that are meant, if there is any of at least a second. */
    static Optional<Found> longest(AudioSource source, DoublePredicate meantHz) {
        List<Block> blocks = blocks(source);
        Found best = new Found(0, 0, 0);
        int i = 0;
        while (i < blocks.size()) {
            if (!blocks.get(i).isTone()) {
                i++;
                continue;
            }
            int end = endOfRun(blocks, i);
            Found run = new Found(i * BLOCK_S, end * BLOCK_S, middle(blocks.subList(i, end)));
            boolean longer = run.seconds() > best.seconds();
            best = longer && meantHz.test(run.frequencyHz()) ? run : best;
            i = end;
        }
        return best.seconds() >= 1 ? Optional.of(best) : Optional.empty();
    }

    private static int endOfRun(List<Block> blocks, int start) {
        double hz = blocks.get(start).hz();
        int end = start + 1;
        for (int i = start + 1; i < blocks.size() && i - end <= SPOILT; i++) {
            if (blocks.get(i).isTone()) {
                if (Math.abs(blocks.get(i).hz() / hz - 1) > SAME_TONE) {
                    return end;
                }
                end = i + 1;
            }
        }
        return end;
    }

    private static double middle(List<Block> run) {
        double[] hz = run.stream().filter(Block::isTone).mapToDouble(Block::hz).sorted().toArray();
        return hz[hz.length / 2];
    }

    private static List<Block> blocks(AudioSource source) {
        int rate = source.sampleRateHz();
        int n = Integer.highestOneBit((int) (BLOCK_S * rate));
        RealFft fft = RealFft.ofSize(n);
        List<Block> blocks = new ArrayList<>();
        int count = (int) (source.frames() / (BLOCK_S * rate));
        for (int b = 0; b < count; b++) {
            double[] power = new double[n / 2 + 1];
            for (double[] x : source.read(Math.round(b * BLOCK_S * rate), n)) {
                for (int i = 0; i < n; i++) {
                    x[i] *= 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n);
                }
                Spectrum s = fft.forward(x);
                for (int k = 0; k < power.length; k++) {
                    power[k] += s.power(k);
                }
            }
            blocks.add(block(power, (double) rate / n, n));
        }
        return blocks;
    }

    private static Block block(double[] power, double binHz, int n) {
        int top = 0;
        double total = 0;
        for (int k = 1; k < power.length; k++) {
            total += power[k];
            boolean inRange = k * binHz >= LOWEST_HZ && k * binHz <= HIGHEST_HZ;
            top = inRange && power[k] > power[top] ? k : top;
        }
        if (top < 3 || top > power.length - 4 || !(total > 0)) {
            return new Block(1, 0, 0);
        }
        double line = 0;
        for (int k = top - 3; k <= top + 3; k++) {
            line += power[k];
        }
        double a = Math.log(power[top - 1] + 1e-300);
        double b = Math.log(power[top]);
        double c = Math.log(power[top + 1] + 1e-300);
        double hz = (top + 0.5 * (a - c) / (a - 2 * b + c)) * binHz;
        // Parseval for a Hann window: its mean square is 3/8.
        double meanSquare = 2 * total / ((double) n * n) / 0.375;
        return new Block(hz, line / total, meanSquare);
    }
}
