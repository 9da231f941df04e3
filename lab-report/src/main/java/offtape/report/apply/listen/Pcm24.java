package offtape.report.apply.listen;

import java.util.Arrays;
import offtape.core.audio.TpdfDither;

/**
 * Samples as whole numbers of 24 bits, little end first, channel by channel in each frame. Sound
 * that lies on the steps of 24 bits already stays as it is; any other is dithered.
 *
 * @param bytes three a sample
 * @param isDithered whether it was
 */
record Pcm24(byte[] bytes, boolean isDithered) {

    private static final double SCALE = 1 << 23;

    /** The same for both sounds, so that equal sounds stay equal. */
    private static final long SEED = 24;

    /** Packs samples of magnitude up to 1; what would round beyond the ends becomes the end. */
    static Pcm24 of(double[][] samples) {
        boolean isDithered = !isOnSteps(samples);
        TpdfDither dither = new TpdfDither(SEED);
        int frames = samples[0].length;
        byte[] bytes = new byte[3 * samples.length * frames];
        int at = 0;
        for (int i = 0; i < frames; i++) {
            for (double[] channel : samples) {
                double steps = channel[i] * SCALE + (isDithered ? dither.nextSteps() : 0);
                int code = (int) Math.max(-SCALE, Math.min(SCALE - 1, Math.rint(steps)));
                bytes[at++] = (byte) code;
                bytes[at++] = (byte) (code >> 8);
                bytes[at++] = (byte) (code >> 16);
            }
        }
        return new Pcm24(bytes, isDithered);
    }

    private static boolean isOnSteps(double[][] samples) {
        return Arrays.stream(samples)
                .allMatch(
                        channel ->
                                Arrays.stream(channel)
                                        .allMatch(x -> x * SCALE == Math.rint(x * SCALE)));
    }
}
