package offtape.report.measure;

import java.util.Arrays;
import offtape.core.audio.AudioSource;

/** Tells whether two channels are one and the same, sample by sample. */
final class IdenticalChannels {

    private static final int BLOCK = 1 << 16;

    private IdenticalChannels() {}

    /**
     * Whether the two channels of a recording are equal from beginning to end. Two real channels
     * differ within the first block, so the answer costs little; silence at the beginning or in
     * both is no difference.
     *
     * @param recording two channels; one that is silent throughout is not held identical
     */
    static boolean in(AudioSource recording) {
        boolean isSilent = true;
        for (long n = 0; n < recording.frames(); n += BLOCK) {
            double[][] block = recording.read(n, (int) Math.min(BLOCK, recording.frames() - n));
            if (!Arrays.equals(block[0], block[1])) {
                return false;
            }
            isSilent &= Arrays.stream(block[0]).allMatch(x -> x == 0);
        }
        return !isSilent;
    }
}
