package offtape.cli.sound.portaudio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import offtape.cli.sound.ChannelPair;

/**
 * Chosen channels to frames of 32-bit integers, of which the upper 24 are used. The library hands
 * integers on by shifting them, or as exact floats; floats it would cut off instead of rounding.
 */
final class OutputFrames {

    private static final double FULL_SCALE = 0x1p23;
    private static final int UNUSED_BITS = 8;

    private final ByteBuffer block;
    private final IntBuffer samples;
    private final int width;
    private final int[] places;

    /** Room for frames of that many channels; those that are not chosen stay silent. */
    OutputFrames(int width, ChannelPair channels, int frames) {
        this.block =
                ByteBuffer.allocateDirect(Integer.BYTES * width * frames)
                        .order(ByteOrder.nativeOrder());
        this.samples = block.asIntBuffer();
        this.width = width;
        this.places = channels.numbers().stream().mapToInt(n -> n - 1).toArray();
    }

    /** What the library is given. */
    ByteBuffer block() {
        return block;
    }

    void encode(double[][] sound, int frames) {
        for (int c = 0; c < places.length; c++) {
            double[] x = sound[c];
            int at = places[c];
            for (int i = 0; i < frames; i++) {
                samples.put(at, code(x[i]));
                at += width;
            }
        }
    }

    private static int code(double sample) {
        double code = Math.rint(sample * FULL_SCALE);
        return (int) Math.max(-FULL_SCALE, Math.min(FULL_SCALE - 1, code)) << UNUSED_BITS;
    }

    void silence(int frames) {
        for (int place : places) {
            for (int i = 0; i < frames; i++) {
                samples.put(i * width + place, 0);
            }
        }
    }
}
