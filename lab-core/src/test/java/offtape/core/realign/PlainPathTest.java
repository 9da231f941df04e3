package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import offtape.core.align.Alignment;
import offtape.core.audio.MemoryAudio;
import offtape.core.music.MadeUpMusic;
import org.junit.jupiter.api.Test;

class PlainPathTest {

    private static final int RATE = 48_000;
    private static final int SECONDS = 3;

    private static MemoryAudio bass() {
        double[][] x =
                MadeUpMusic.of(MadeUpMusic.Kind.BASS, RATE, SECONDS, 4).read(0, SECONDS * RATE);
        return new MemoryAudio("bass", RATE, x[0], x[1]);
    }

    private static Alignment near(double start) {
        return new Alignment(start, 1, List.of(1.0, 1.0), 0, false);
    }

    /** An alignment that is 3.4 frames early is told so, with the gain, under hiss too. */
    @Test
    void tellsDelayAndGainOfAPathThatDoesNothingElse() {
        for (double hissDb : new double[] {-300, -50}) {
            MemoryAudio sent = bass();
            MemoryAudio heard = Delayed.by(sent, 503.4, -0.5, hissDb);
            PlainPath path = PlainPath.beside(near(500), sent, heard, true).orElseThrow();
            assertEquals(3.4, path.lateFrames(), 0.002);
            assertEquals(-0.5, path.gains().get(0), 1e-4);
            // what hiss of −50 dB moves it by lies within three of its deviations
            double doubt = Math.max(5e-4, 3 * path.doubtFrames());
            assertEquals(3.4, path.lateFrames(), doubt, hissDb + " dB");
        }
    }

    /** y[n] = 0.9·y[n−1] + 0.1·x[n], a low-pass of 800 Hz, delays and does more than that. */
    @Test
    void aFilterIsNotPlain() {
        MemoryAudio sent = bass();
        double[][] x = sent.read(0, SECONDS * RATE);
        for (double[] channel : x) {
            double last = 0;
            for (int i = 0; i < channel.length; i++) {
                last = 0.9 * last + 0.1 * channel[i];
                channel[i] = last;
            }
        }
        MemoryAudio filtered = new MemoryAudio("filtered", RATE, x[0], x[1]);
        for (double hissDb : new double[] {-300, -40}) {
            MemoryAudio heard = Delayed.by(filtered, 500, 1, hissDb);
            assertTrue(PlainPath.beside(near(500), sent, heard, true).isEmpty(), hissDb + " dB");
        }
    }

    /** Too short to hold a piece; and nothing but silence. */
    @Test
    void nothingIsTooLittle() {
        MemoryAudio brief = new MemoryAudio("brief", RATE, new double[1000], new double[1000]);
        assertEquals(Optional.empty(), PlainPath.beside(near(0), brief, brief, true));
        double[] none = new double[2 * RATE];
        MemoryAudio silent = new MemoryAudio("silent", RATE, none, none);
        assertEquals(Optional.empty(), PlainPath.beside(near(0), silent, silent, true));
    }
}
