package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.dsp.Downconverter;
import offtape.core.unit.Decibels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How much around a tone is demodulated, worked out by hand. */
class ToneBandTest {

    /**
     * 220 Hz and 1.2 % of the tone; for a low tone 0.55 of it: 0.55 · 315 = 173.25 Hz. What stops
     * lies at 1.7 times that, for a low tone at 0.92 of it, before it meets its own image.
     */
    @ParameterizedTest
    @CsvSource({
        "3150, 257.8, 438.26",
        "10000, 340, 578",
        "1000, 232, 394.4",
        "400, 220, 368",
        "315, 173.25, 289.8"
    })
    void theBandGrowsWithTheTone(double toneHz, double passHz, double stopHz) {
        ToneBand band = ToneBand.of(toneHz);
        assertEquals(passHz, band.passHz(), 1e-9);
        assertEquals(stopHz, band.stopHz(), 1e-9);
    }

    /**
     * A tone may wander by 1.2 % and 20 Hz more. 3150 Hz: 1500 Hz + 57.8 Hz pass and 1.7 times that
     * stops. 1000 Hz: half of it, 500 Hz; 1.7 · 532 Hz stops. 10 kHz at 24 kHz of sample rate has
     * 2000 Hz up to half the rate, 0.92 of which are 1840 Hz: 1840 / 1.7 − 140 = 942.35 Hz.
     */
    @ParameterizedTest
    @CsvSource({
        "3150, 44100, 1500, 2648.26",
        "1000, 48000, 500, 904.4",
        "10000, 24000, 942.3529411764706, 1840"
    })
    void scrapeIsReadAsFarAsTheToneShowsIt(
            double toneHz, int sampleRateHz, double highHz, double stopHz) {
        ScrapeBand band = ScrapeBand.of(toneHz, sampleRateHz);
        assertEquals(200, band.lowHz());
        assertEquals(highHz, band.highHz(), 1e-9);
        assertEquals(stopHz, band.stopHz(), 1e-9);
    }

    /** Half of 800 Hz is 400 Hz, 200 Hz more than where scrape flutter begins. */
    @Test
    void eightHundredHertzIsTheLowestToneForScrape() {
        assertTrue(ScrapeBand.of(800, 48_000).isWide());
        assertFalse(ScrapeBand.of(799, 48_000).isWide());
    }

    /** At the edge with all that the tone may wander nothing is lost, and 90 dB where it stops. */
    @Test
    void theFilterKeepsTheBandOfAToneThatWanders() {
        ScrapeBand band = ScrapeBand.of(3150, 44_100);
        Downconverter converter = band.converter(3150, 44_100);
        assertEquals(1, converter.gain(1557.8), 1e-4);
        assertTrue(Decibels.ofAmplitude(Math.abs(converter.gain(2648.26))) < -89);
        // The differentiator is true up to 0.38 of the rate.
        assertTrue(0.38 * converter.rateHz() >= 1500);
        // And it is no slower than a quarter more than what passes and stops together.
        assertTrue(converter.rateHz() >= 1.25 * (1557.8 + 2648.26));
    }
}
