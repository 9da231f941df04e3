package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A thousand frames a second, so that the 4 ms around a moment are four frames. From frame 50 on
 * left is 0.3 and right 0.4: 0.25 a frame. The level is the root of what falls into the 4 ms.
 */
class EnvelopeTest {

    private static final int RATE = 1000;

    private static MemoryAudio step() {
        double[][] x = new double[2][100];
        Arrays.fill(x[0], 50, 100, 0.3);
        Arrays.fill(x[1], 50, 100, -0.4);
        return new MemoryAudio("step", RATE, x);
    }

    /** All four frames; two of them; two and a half; a tenth of one; none. */
    @ParameterizedTest
    @CsvSource({
        "0.0600, 1.0",
        "0.0500, 0.5",
        "0.0505, 0.625",
        "0.0481, 0.025",
        "0.0480, 0",
        "0.0450, 0"
    })
    void theLevelIsTheRootOfTheEnergyAround(double seconds, double energy) {
        Envelope level = Envelope.of(step(), 0.045, 0.06);
        assertEquals(Math.sqrt(energy), level.at(seconds), 1e-6);
    }

    /** Neither what is read nor where it begins is a whole number of frames. */
    @ParameterizedTest
    @CsvSource({"0.0603, 0.0707", "0.0609, 0.0791", "0.0600, 0.0600"})
    void theEndsOfTheStretchHaveTheirWholeSurroundings(double from, double to) {
        Envelope level = Envelope.of(step(), from, to);
        assertEquals(1, level.at(from), 1e-9);
        assertEquals(1, level.at(to), 1e-9);
    }

    /** Before the recording, and behind it, there is nothing. */
    @ParameterizedTest
    @CsvSource({"0.100, 0.5", "0.101, 0.25", "0.103, 0", "-0.010, 0"})
    void beyondTheRecordingThereIsSilence(double seconds, double energy) {
        Envelope level = Envelope.of(step(), -0.02, 0.12);
        assertEquals(Math.sqrt(energy), level.at(seconds), 1e-6);
    }
}
