package offtape.core.realign;

import java.util.List;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;

/**
 * Whether a path changed no sample but for whole frames and polarity, which only a look at the
 * samples can tell: music of few tones tells less well by phase than a digital path deserves.
 */
final class WholePath {

    /** How far the delay may be misread: short music of few tones tells it poorly by phase. */
    private static final int REACH_FRAMES = 16;

    private static final double NEAR_STEP = 1e-4;

    /** So many samples that are no silence have to be the same. */
    private static final int LEAST_SOUNDING = 1000;

    private static final double SOUNDING = 1e-4;

    /** What a sample may differ by, full scale: a step of 24 bits. */
    private static final double SAME = 1.3e-7;

    private static final int LOOKED_AT = 4096;
    private static final int PLACES = 200;

    private WholePath() {}

    /** The exact alignment if the samples are the same, else the one given. */
    static Alignment taken(Alignment found, AudioSource original, AudioSource returned) {
        long middle = original.frames() / 2;
        double late = found.startFrame() + (found.step() - 1) * middle;
        boolean isNear =
                Math.abs(found.step() - 1) < NEAR_STEP
                        && found.gains().stream().allMatch(g -> Math.abs(Math.abs(g) - 1) < 0.01);
        for (int off = 0; isNear && off <= 2 * REACH_FRAMES; off++) {
            // the nearest first, to either side
            long whole = Math.round(late) + (off % 2 == 0 ? -off / 2 : (off + 1) / 2);
            if (isSame(found, whole, original, returned)) {
                List<Double> signs = found.gains().stream().map(Math::signum).toList();
                return new Alignment(whole, 1, signs, 0, false);
            }
        }
        return found;
    }

    private static boolean isSame(
            Alignment found, long late, AudioSource original, AudioSource returned) {
        long sounding = 0;
        for (int n = 0; n < PLACES; n++) {
            long at = Math.max(0, original.frames() - LOOKED_AT) * n / PLACES;
            double[][] x = original.read(at, LOOKED_AT);
            double[][] y = returned.read(at + late, LOOKED_AT);
            for (int c = 0; c < y.length; c++) {
                double sign = Math.signum(found.gains().get(c));
                double[] sent = x[Math.min(c, x.length - 1)];
                for (int i = 0; i < LOOKED_AT; i++) {
                    long place = at + late + i;
                    boolean isIn = place >= 0 && place < returned.frames();
                    if (isIn && Math.abs(sign * y[c][i] - sent[i]) > SAME) {
                        return false;
                    }
                    sounding += isIn && Math.abs(sent[i]) > SOUNDING ? 1 : 0;
                }
            }
        }
        return sounding >= LEAST_SOUNDING;
    }
}
