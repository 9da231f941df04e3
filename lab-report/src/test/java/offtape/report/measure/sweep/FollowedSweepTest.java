package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.sweep.Leakage.Leak;
import offtape.report.measure.tone.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bands filled by hand with single pointers. */
class FollowedSweepTest {

    private static final Cue.Sweep CUE =
            new Cue.Sweep("s", ChannelSet.BOTH, 0, 24_000, 40, 3000, -20);

    private static final double BAND_S = 0.05;

    /** Bands −10 to 9: an octave and a bit around 1 kHz, half of it on either side. */
    private static FollowedSweep stereo() {
        return new FollowedSweep(CUE, -10, 20, 2, BAND_S);
    }

    private static Baseband one(Complex z) {
        return new Baseband(new double[] {z.re()}, new double[] {z.im()}, 100, 0);
    }

    private static void hear(FollowedSweep sweep, int band, Complex... channels) {
        sweep.addReturn(band, Arrays.stream(channels).map(z -> one(z)).toList(), 0, 20);
    }

    private static Complex z(double re, double im) {
        return new Complex(re, im);
    }

    private static Complex polar(double size, double degrees) {
        return Complex.polar(size, Math.toRadians(degrees));
    }

    /** |3 + 4i|² = 25, |1|² = 1, mean 13; |2i|² = 4 and 0, mean 2. */
    @Test
    void powersAreMeansOverTheBand() {
        FollowedSweep sweep = stereo();
        hear(sweep, 0, z(3, 4), z(0, 2));
        hear(sweep, 0, z(1, 0), z(0, 0));
        sweep.addProgramme(0, one(z(0, 6)), 0);
        sweep.addProgramme(0, one(z(2, 0)), 0);
        assertEquals(13, sweep.power(0, 10), 1e-12);
        assertEquals(2, sweep.power(1, 10), 1e-12);
        assertEquals(20, sweep.programmePower(10), 1e-12);
        for (int i = 0; i < sweep.size(); i++) {
            if (i != 10) {
                assertEquals(0, sweep.power(0, i));
                assertEquals(0, sweep.programmePower(i));
                assertEquals(0, sweep.crossRe(i));
                assertEquals(0, sweep.crossIm(i));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"-11, -1", "-10, 0", "9, 19", "10, -1"})
    void whatLiesOutsideTheBandsIsLeftOut(int band, int place) {
        FollowedSweep sweep = stereo();
        hear(sweep, band, z(1, 0), z(1, 0));
        sweep.addProgramme(band, one(z(1, 0)), 0);
        for (int i = 0; i < sweep.size(); i++) {
            assertEquals(i == place ? 1 : 0, sweep.power(0, i));
            assertEquals(i == place ? 1 : 0, sweep.programmePower(i));
        }
    }

    /** 48 bands an octave around 1 kHz: band −10 lies at 1000 · 2^(−10/48) = 865.5 Hz. */
    @Test
    void bandsHaveTheirFrequencies() {
        FollowedSweep sweep = stereo();
        assertEquals(865.54, sweep.frequencyHz(0), 0.005);
        assertEquals(1000, sweep.frequencyHz(10), 1e-9);
        assertEquals(10, sweep.index(1007));
        assertEquals(11, sweep.index(1008));
        assertEquals(-38, sweep.index(500));
        assertEquals(CUE, sweep.cue());
        // L = 0.05 s · 48 / ln 2 = 3.4625 s, so 3462.5 cycles at 1 kHz
        assertEquals(3462.47, sweep.growthCycles(1000), 0.01);
    }

    /** A right channel that is late lags: left times its conjugate then leads. */
    @Test
    void theCrossSpectrumIsLeftTimesConjugateRight() {
        FollowedSweep sweep = stereo();
        hear(sweep, 3, polar(2, 70), polar(3, 40));
        hear(sweep, 3, polar(2, -20), polar(3, -50));
        assertEquals(6 * Math.cos(Math.PI / 6), sweep.crossRe(13), 1e-12);
        assertEquals(6 * Math.sin(Math.PI / 6), sweep.crossIm(13), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 35, -120, 179})
    void thePhaseIsThatAgainstTheProgramme(double degrees) {
        FollowedSweep sweep = stereo();
        sweep.addProgramme(0, one(polar(0.5, 75)), 0);
        hear(sweep, 0, polar(0.1, 75 + degrees), polar(0.1, 75));
        assertEquals(degrees, Math.toDegrees(sweep.phase(0, 10)), 1e-9);
        assertEquals(0, sweep.phase(1, 10), 1e-12);
        assertEquals(Double.NaN, sweep.phase(0, 11));
    }

    /** 3 · 4 upright and 1 · 4 inverted: (12 − 4) / 16; what stands across counts as neither. */
    @Test
    void uprightnessWeighsByAmplitude() {
        FollowedSweep sweep = stereo();
        for (int band = -1; band <= 1; band++) {
            sweep.addProgramme(band, one(polar(4, 50)), 0);
        }
        hear(sweep, -1, polar(3, 50), polar(1, 230));
        hear(sweep, 0, polar(1, 230), polar(1, 230));
        hear(sweep, 1, polar(4, 140), polar(1, 230));
        double below = sweep.frequencyHz(9);
        double above = sweep.frequencyHz(11);
        assertEquals(0.5, sweep.uprightness(0, below, above), 1e-12);
        assertEquals(-1, sweep.uprightness(0, 1000, above), 1e-12);
        assertEquals(0.25, sweep.uprightness(0, below, 1e5), 1e-12);
        assertEquals(0.25, sweep.uprightness(0, 1, 1e5), 1e-12);
        assertEquals(-1, sweep.uprightness(1, 1, 1e5), 1e-12);
        assertEquals(0, sweep.uprightness(0, 1050, 1e5));
    }

    /** White noise of density D has D · 20 Hz, which a pointer reads as half of it. */
    @Test
    void noiseEntersByItsDensityAndTheBandsWidth() {
        FollowedSweep sweep = stereo();
        PowerDensity white = Densities.white(3e-6, 8000);
        assertEquals(0, sweep.noisePower(0, 10, white, 1));
        hear(sweep, 0, z(1, 0), z(1, 0));
        hear(sweep, 0, z(1, 0), z(1, 0));
        assertEquals(3e-6 * 20 / 2, sweep.noisePower(0, 10, white, 1), 1e-15);
        assertEquals(0, sweep.noisePower(0, 10, null, 1));
        sweep.addReturn(0, List.of(one(z(1, 0)), one(z(1, 0))), 0, 80);
        assertEquals(3e-6 * 40 / 2, sweep.noisePower(0, 10, white, 1), 1e-15);
    }

    /** Around the place in the recording, which a fast tape moves up. */
    @Test
    void noiseIsThatAroundTheFrequencyInTheRecording() {
        FollowedSweep sweep = stereo();
        sweep.addReturn(0, List.of(one(z(1, 0)), one(z(1, 0))), 0, 400);
        PowerDensity falling = Densities.falling(8000);
        assertEquals(falling.mean(1800, 2200) * 200, sweep.noisePower(0, 10, falling, 2), 1e-15);
        assertTrue(falling.mean(1800, 2200) < 0.8 * falling.mean(800, 1200));
    }

    /** 20 Hz for 0.05 s are one value, 80 Hz four; with 10 Hz two bands share one. */
    @ParameterizedTest
    @CsvSource({"20, 1, 1", "80, 4, 4", "10, 0.5, 1"})
    void valuesAreBandwidthTimesTime(double widthHz, double values, double independent) {
        FollowedSweep sweep = stereo();
        assertEquals(0, sweep.values(10));
        assertEquals(1, sweep.independent(10));
        for (int k = 0; k < 2; k++) {
            sweep.addReturn(0, List.of(one(z(1, 0)), one(z(1, 0))), 0, widthHz);
        }
        assertEquals(values, sweep.values(10), 1e-12);
        assertEquals(independent, sweep.independent(10), 1e-12);
    }

    /** L = l + a·r: what is left of the power is |1 − ab|² of it, here with b = 0 all of it. */
    @Test
    void aLeakIsTakenOutOfThePower() {
        Complex l = polar(2, 10);
        Complex r = polar(5, -60);
        FollowedSweep sweep = stereo();
        hear(sweep, 0, l.plus(r.times(polar(0.1, 33))), r);
        Leakage leakage = new Leakage(Leak.NONE, new Leak(polar(0.1, 33), 1000));
        assertEquals(4, sweep.powerWithout(leakage, 0, 10), 1e-12);
        assertEquals(25, sweep.powerWithout(leakage, 1, 10), 1e-12);
        FollowedSweep turned = stereo();
        hear(turned, 0, r, l.plus(r.times(polar(0.1, 33))));
        Leakage other = new Leakage(new Leak(polar(0.1, 33), 1000), Leak.NONE);
        assertEquals(4, turned.powerWithout(other, 1, 10), 1e-12);
        FollowedSweep mono = new FollowedSweep(CUE, -10, 20, 1, BAND_S);
        hear(mono, 0, z(3, 4));
        assertEquals(25, mono.powerWithout(leakage, 0, 10), 1e-12);
        assertEquals(0, mono.crossRe(10));
    }

    /**
     * Left has passed 6.0206 dB more than at 1 kHz and 30° late, right half as much and 50° early:
     * power is divided by 4 and by ¼, noise as well, the phases turn back, and the cross-spectrum
     * keeps its size and turns by −30° − 50°.
     */
    @Test
    void anInterfaceIsDividedOut() {
        FollowedSweep sweep = stereo();
        sweep.addProgramme(0, one(polar(1, 15)), 0);
        hear(sweep, 0, polar(2, 40), polar(3, 40));
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel("left", Interfaces.level(20 * Math.log10(2), -30)),
                        Interfaces.channel("right", Interfaces.level(20 * Math.log10(0.5), 50)));
        FollowedSweep rest = sweep.without(known, WrittenSweep.plain().ret());
        assertEquals(1, rest.power(0, 10), 1e-12);
        assertEquals(36, rest.power(1, 10), 1e-12);
        assertEquals(40 + 30 - 15, Math.toDegrees(rest.phase(0, 10)), 1e-9);
        assertEquals(40 - 50 - 15, Math.toDegrees(rest.phase(1, 10)), 1e-9);
        assertEquals(6, Math.hypot(rest.crossRe(10), rest.crossIm(10)), 1e-12);
        assertEquals(80, Math.toDegrees(Math.atan2(rest.crossIm(10), rest.crossRe(10))), 1e-9);
        PowerDensity white = Densities.white(1, 8000);
        assertEquals(10 / 4.0, rest.noisePower(0, 10, white, 1), 1e-12);
        assertEquals(10 * 4.0, rest.noisePower(1, 10, white, 1), 1e-12);
        assertEquals(sweep.values(10), rest.values(10), 1e-12);
        assertEquals(1, rest.programmePower(10), 1e-12);
        assertEquals(sweep.growthCycles(1), rest.growthCycles(1), 1e-12);
        // and once more through another of them
        FollowedSweep twice = rest.without(known, WrittenSweep.plain().ret());
        assertEquals(10 / 16.0, twice.noisePower(0, 10, white, 1), 1e-12);
    }

    /** Right was dead in the loopback and stays as it was. */
    @Test
    void aChannelThatIsNotKnownStays() {
        FollowedSweep sweep = stereo();
        hear(sweep, 0, polar(2, 40), polar(3, 40));
        KnownInterface known =
                Interfaces.of(Interfaces.channel("left", Interfaces.level(20 * Math.log10(2), 0)));
        FollowedSweep rest = sweep.without(known, WrittenSweep.plain().ret());
        assertEquals(1, rest.power(0, 10), 1e-12);
        assertEquals(9, rest.power(1, 10), 1e-12);
        FollowedSweep mono = new FollowedSweep(CUE, -10, 20, 1, BAND_S);
        hear(mono, 0, z(3, 4));
        assertEquals(25 / 4.0, mono.without(known, WrittenSweep.plain().ret()).power(0, 10), 1e-12);
    }

    /**
     * The interface is known from 900 to 1800 Hz of the recording. At 1.25 times the speed those
     * are 720 to 1440 Hz of the programme.
     */
    @Test
    void whatTheInterfaceHardlyLetsThroughIsNotHeard() {
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel(
                                "left",
                                Interfaces.curve(
                                        new double[] {900, 1800},
                                        new double[] {0, 0},
                                        new double[] {0, 0})));
        FollowedSweep sweep = new FollowedSweep(CUE, -48, 96, 2, BAND_S);
        for (int band = -48; band < 48; band++) {
            hear(sweep, band, z(1, 0), z(1, 0));
            sweep.addProgramme(band, one(z(1, 0)), 0);
        }
        ProgrammeReturn fast = WrittenSweep.plain().atSpeed(1.25).ret();
        FollowedSweep rest = sweep.without(known, fast);
        for (int i = 0; i < rest.size(); i++) {
            double hz = rest.frequencyHz(i);
            boolean told = hz > 720 && hz < 1440;
            for (int c = 0; c < 2; c++) {
                assertEquals(told ? 1 : 0, rest.power(c, i), hz + " Hz");
            }
            assertEquals(1, rest.programmePower(i));
        }
    }
}
