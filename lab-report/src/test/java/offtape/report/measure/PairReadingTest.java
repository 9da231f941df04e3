package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.OrderSpectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PairReadingTest {

    private static final int RATE = StraightReturn.RATE;
    private static final Cue.Tone TONE = StraightReturn.tone("first");

    /** A tone of 1 kHz throughout, late by so much, in noise. */
    private static double[] tone(double peak, double lateUs, double noise, int seed) {
        Random random = new Random(seed);
        double[] x = new double[(int) StraightReturn.SHEET.frames()];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE - 1e-6 * lateUs;
            x[i] = peak * Math.sin(2 * Math.PI * 1000 * t) + noise * random.nextGaussian();
        }
        return x;
    }

    private static Optional<PairReading> reading(double[]... channels) {
        ProgrammeReturn ret = StraightReturn.of(channels);
        return PairReading.of(TONE, 2.75, OrderSpectrum.of(ret, TONE));
    }

    /** Half the amplitude is 20·log ½ = −6.02 dB. */
    @ParameterizedTest
    @CsvSource({"20, 0.05, -6.0206", "-35, 0.1, 0", "0, 0.2, 6.0206"})
    void latenessAndBalanceAreThoseOfTheRightChannel(double late, double right, double db) {
        PairReading reading = reading(tone(0.1, 0, 0, 1), tone(right, late, 0, 1)).orElseThrow();
        assertEquals(late, reading.rightLateUs(), 0.001);
        assertEquals(db, reading.rightOverLeftDb(), 1e-4);
        assertEquals(1000, reading.hz());
        assertEquals(-20, reading.levelDb());
        assertEquals(2.75, reading.atSeconds());
    }

    /**
     * White noise of rms s is a line of squared peak amplitude 6·s²/(rate·time) through Hann's
     * window, whose noise bandwidth is 1.5 lines (Harris, 1978), so each channel of peak A moves
     * the ratio by the root of half of that over A². Of the tone of 1.5 s, 60 ms at each end and
     * what filters need are not read, about 1.3 s; the noise is told from 68 lines.
     */
    @Test
    void theShareIsThatOfTheNoiseOfBothChannels() {
        double noise = 0.003;
        PairReading reading =
                reading(tone(0.1, 0, noise, 1), tone(0.05, 0, noise, 2)).orElseThrow();
        double line = 6 * noise * noise / (RATE * 1.3);
        double share = Math.sqrt(line / 2 * (1 / (0.1 * 0.1) + 1 / (0.05 * 0.05)));
        assertEquals(share, reading.share(), 0.2 * share);
    }

    /** A share of 1e-3 at 1 kHz is 1e-3/(2π·1000 Hz). */
    @Test
    void theShareIsALateness() {
        PairReading reading = new PairReading(0, 1000, 0, 0, 0, 1e-3);
        assertEquals(0.159155, reading.sigmaUs(), 1e-6);
        assertEquals(0.0795775, new PairReading(0, 2000, 0, 0, 0, 1e-3).sigmaUs(), 1e-6);
    }

    /** A phase tells lateness up to whole periods, here of 100 µs. */
    @ParameterizedTest
    @CsvSource({"10, 0, 10", "0, 10, -10", "45, -45, -10", "-45, 45, 10", "250, 10, 40"})
    void latenessAgainstAnotherIsTheLeastOfWholePeriods(double own, double other, double later) {
        PairReading a = new PairReading(0, 10_000, 0, own, 0, 0);
        PairReading b = new PairReading(0, 10_000, 0, other, 0, 0);
        assertEquals(later, a.laterUs(b), 1e-9);
    }

    /** A line 20 dB over the noise's is clear, as a power ratio of 100. */
    @Test
    void aToneInItsNoiseTellsNothing() {
        double line = 6.0 / (RATE * 1.3);
        double clear = Math.sqrt(0.1 * 0.1 / 100 / line);
        double[] left = tone(0.1, 0, 1e-4, 1);
        assertEquals(Optional.empty(), reading(left, tone(0.1, 0, 1.5 * clear, 2)));
        assertEquals(Optional.empty(), reading(tone(0.1, 0, 1.5 * clear, 2), left));
        assertEquals(1000, reading(left, tone(0.1, 0, clear / 1.5, 2)).orElseThrow().hz());
    }

    @Test
    void oneChannelIsNoPair() {
        assertEquals(Optional.empty(), reading(tone(0.1, 0, 0, 1)));
        assertEquals(Optional.empty(), PairReading.of(TONE, 0, List.of()));
    }
}
