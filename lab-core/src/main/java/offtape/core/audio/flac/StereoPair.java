package offtape.core.audio.flac;

/** Left and right from the sums and differences they were coded as (RFC 9639, section 4.2). */
final class StereoPair {

    private StereoPair() {}

    /** How many bits a channel has beyond those of the stream: a difference needs one more. */
    static int extraBits(int assignment, int channel) {
        boolean isSide =
                switch (assignment) {
                    case FrameHeader.LEFT_SIDE, FrameHeader.MID_SIDE -> channel == 1;
                    case FrameHeader.SIDE_RIGHT -> channel == 0;
                    default -> false;
                };
        return isSide ? 1 : 0;
    }

    /** Replaces a coded pair by left and right; leaves channels that are coded singly. */
    static void undo(int assignment, long[][] samples, int count) {
        switch (assignment) {
            case FrameHeader.LEFT_SIDE -> leftSide(samples[0], samples[1], count);
            case FrameHeader.SIDE_RIGHT -> sideRight(samples[0], samples[1], count);
            case FrameHeader.MID_SIDE -> midSide(samples[0], samples[1], count);
            default -> {
                // each channel by itself
            }
        }
    }

    private static void leftSide(long[] left, long[] side, int count) {
        for (int i = 0; i < count; i++) {
            side[i] = left[i] - side[i];
        }
    }

    private static void sideRight(long[] side, long[] right, int count) {
        for (int i = 0; i < count; i++) {
            side[i] += right[i];
        }
    }

    private static void midSide(long[] mid, long[] side, int count) {
        for (int i = 0; i < count; i++) {
            // the halving dropped the lowest bit of the sum, which is that of the difference
            long sum = mid[i] << 1 | side[i] & 1;
            long difference = side[i];
            mid[i] = sum + difference >> 1;
            side[i] = sum - difference >> 1;
        }
    }
}
