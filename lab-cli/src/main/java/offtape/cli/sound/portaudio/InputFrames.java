package offtape.cli.sound.portaudio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import offtape.cli.sound.ChannelPair;

/**
 * Frames of 32-bit floats to chosen channels. A float holds 24 bits exactly, and the library makes
 * it from any kind of sample by powers of two; integers it would make from a host's floats with a
 * factor that is not one.
 */
final class InputFrames {

    private final ByteBuffer block;
    private final FloatBuffer samples;
    private final int width;
    private final int[] places;

    /** Room for frames of that many channels. */
    InputFrames(int width, ChannelPair channels, int frames) {
        this.block =
                ByteBuffer.allocateDirect(Float.BYTES * width * frames)
                        .order(ByteOrder.nativeOrder());
        this.samples = block.asFloatBuffer();
        this.width = width;
        this.places = channels.numbers().stream().mapToInt(n -> n - 1).toArray();
    }

    /** What the library fills. */
    ByteBuffer block() {
        return block;
    }

    void decode(double[][] sound, int frames) {
        for (int c = 0; c < places.length; c++) {
            double[] x = sound[c];
            int at = places[c];
            for (int i = 0; i < frames; i++) {
                x[i] = samples.get(at);
                at += width;
            }
        }
    }
}
