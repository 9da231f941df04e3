package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShortFramesTest {

    /** At 8 kHz 0.13 s are 1040 samples: frames of 1024, one each 512. */
    @ParameterizedTest
    @CsvSource({"1023, 0", "1024, 1", "1535, 1", "1536, 2", "8192, 15"})
    void framesLieHalfOverOneAnother(int samples, int count) {
        assertEquals(count, new ShortFrames(new double[samples], 8000).count());
    }

    /** Each band begins where the one before ends; the last ends under 0.4 of the rate or so. */
    @ParameterizedTest
    @CsvSource({"44100, 10000", "8000, 3150", "96000, 10000"})
    void bandsReachAsFarAsTheRecording(double rateHz, double nominalHz) {
        List<BandCourse> found = new ShortFrames(new double[(int) rateHz], rateHz).bands();
        assertEquals(1, found.stream().filter(b -> b.holds(nominalHz)).count());
        assertTrue(found.get(found.size() - 1).holds(nominalHz));
    }

    /** Lines are sought up to 0.4 of the rate at most. */
    @Test
    void linesAreSoughtAsFarAsTheRecordingReaches() {
        assertEquals(3200, ShortFrames.highestHz(8000), 1e-9);
        // A twentieth of a decade under 200 Hz.
        assertEquals(178.25, ShortFrames.lowestHz(), 0.01);
    }

    /** A sine of 1 kHz has its mean square in its band, in every frame, and nowhere else. */
    @ParameterizedTest
    @CsvSource({"44100", "8000"})
    void aSineIsReadInItsBand(double rateHz) {
        double[] x = new double[(int) rateHz];
        for (int i = 0; i < x.length; i++) {
            x[i] = 0.2 * Math.sin(2 * Math.PI * 1000 * i / rateHz);
        }
        ShortFrames frames = new ShortFrames(x, rateHz);
        for (BandCourse band : frames.bands()) {
            for (int f = 0; f < frames.count(); f++) {
                assertEquals(band.holds(1000) ? 0.02 : 0, band.power(f), 1e-6);
            }
        }
    }
}
