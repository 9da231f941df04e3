package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.mode.ModeQuestion;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.NoiseSpectrum;
import offtape.report.result.Results;
import offtape.report.result.Session;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * An interface written by formula measures itself, then is taken out of a return through it.
 *
 * <p>It delays the left channel by 80 samples of 16 kHz, 5 ms, and the right one by one more, 62.5
 * µs; it takes {0.1, 0.8, 0.1} of neighbouring samples, whose response is 0.8 + 0.2·cos ω; it turns
 * x into x + 0.75·x³; a share of 0.002 of left gets into right; it adds white noise of rms 1e-4.
 */
class LoopbackTest {

    private static final int RATE = 16_000;
    private static final int DELAY = 80;
    private static final double CUBE = 0.75;
    private static final double LEAK = 0.002;
    private static final double NOISE = 1e-4;
    private static final double[] GAIN = {0.8, 0.5};
    private static final double MACHINE_NOISE = 2e-4;

    /** Peak of reference level, −18 dBFS. */
    private static final double PEAK = Math.pow(10, -18 / 20.0);

    /** A sine of peak A through x + c·x³ has the fundamental A·(1 + ¾·c·A²) and K3 ¼·c·A². */
    private static final double RISE = 1 + 0.75 * CUBE * PEAK * PEAK;

    private static Programme programme;
    private static Results loop;
    private static Results heard;
    private static Results without;

    @BeforeAll
    static void measure() {
        CueSheet sheet = sheet();
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        loop = measured(throughInterface(sound, GAIN, 1), CaptureMode.LOOPBACK, null);
        double[][] back = throughInterface(machine(sound), GAIN, 2);
        heard = measured(back, CaptureMode.OFF_TAPE, null);
        without = measured(back, CaptureMode.OFF_TAPE, known());
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        long at = RATE / 2;
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at, RATE / 2));
        at += RATE;
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, at, RATE, 1000, 0));
        at += RATE + RATE / 4;
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, 2 * RATE));
        at += 2 * RATE + RATE / 4;
        cues.add(new Cue.Sweep("sweep", ChannelSet.BOTH, at, 3 * RATE, 20, 7000, -20));
        at += 3 * RATE + RATE / 4;
        List<Cue.Step> steps =
                List.of(new Cue.Step(at, RATE, -6), new Cue.Step(at + RATE, RATE, 0));
        cues.add(new Cue.Ladder("steps", ChannelSet.BOTH, at, 2 * RATE, 1000, steps));
        at += 2 * RATE + RATE / 4;
        for (ChannelSet set : List.of(ChannelSet.LEFT, ChannelSet.RIGHT)) {
            cues.add(new Cue.Tone(set.key() + "-only", set, at, RATE, 1000, 0));
            at += RATE + RATE / 4;
        }
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at, RATE / 2));
        return new CueSheet(RATE, at + RATE, -18, null, cues);
    }

    /** A machine that adds hiss and is late by 100 ms, as one of heads apart is. */
    private static double[][] machine(double[][] x) {
        Random random = new Random(3);
        int late = RATE / 10;
        double[][] out = new double[2][x[0].length + late];
        for (int c = 0; c < 2; c++) {
            for (int i = 0; i < out[c].length; i++) {
                out[c][i] = (i < late ? 0 : x[c][i - late]) + MACHINE_NOISE * random.nextGaussian();
            }
        }
        return out;
    }

    private static double[][] throughInterface(double[][] x, double[] gain, int seed) {
        Random random = new Random(seed);
        double[][] out = new double[2][x[0].length + RATE / 2];
        for (int c = 0; c < 2; c++) {
            for (int i = 0; i < out[c].length; i++) {
                int n = i - DELAY - c;
                double own = 0.8 * at(x[c], n) + 0.1 * (at(x[c], n - 1) + at(x[c], n + 1));
                double other = 0.8 * at(x[0], n) + 0.1 * (at(x[0], n - 1) + at(x[0], n + 1));
                double mixed = own + (c == 1 ? LEAK * other : 0);
                out[c][i] =
                        gain[c] * (mixed + CUBE * mixed * mixed * mixed)
                                + NOISE * random.nextGaussian();
            }
        }
        return out;
    }

    private static double at(double[] x, int i) {
        return i < 0 || i >= x.length ? 0 : x[i];
    }

    private static Results measured(double[][] sound, CaptureMode mode, KnownInterface known) {
        Session session = new Session(null, null, null, mode.key(), "", null, "", "");
        MemoryAudio recording = new MemoryAudio("r.wav", RATE, sound[0], sound[1]);
        Capture capture = new Capture(mode, ModeQuestion.NOBODY, null, known, 1);
        return Measurement.run(programme, recording, session, capture, List.of());
    }

    private static KnownInterface known() {
        return KnownInterface.of(
                new LoopbackSession(
                        "loop/results.json",
                        RATE,
                        loop.session().programmeSha256(),
                        new LoopbackUse("2024-05-01T10:00:00Z", "0".repeat(64)),
                        loop.interfaceFigures()));
    }

    private static double filterDb(double hz) {
        return 20 * Math.log10(0.8 + 0.2 * Math.cos(2 * Math.PI * hz / RATE));
    }

    /** Peak of the reference tone on a channel, with the interface's filter, cube and leak. */
    private static double peak(int c) {
        return GAIN[c] * PEAK * Math.pow(10, filterDb(1000) / 20) * RISE * (c == 1 ? 1 + LEAK : 1);
    }

    private static InterfaceFigures.Channel own(int c) {
        return loop.interfaceFigures().channels().get(c);
    }

    @Test
    void levelAndDelayOfEachChannelAreTold() {
        assertEquals(List.of("left", "right"), List.of(own(0).channel(), own(1).channel()));
        for (int c = 0; c < 2; c++) {
            assertEquals(20 * Math.log10(peak(c)), own(c).referenceReturnDbfs(), 0.02);
            double delayMs = 1000.0 * (DELAY + c) / RATE;
            assertEquals(delayMs, own(c).delay().value(), own(c).delay().uncertainty());
            assertTrue(own(c).delay().uncertainty() < 0.05, own(c).delay().toString());
        }
        assertEquals(62.5, loop.interfaceFigures().interchannelDelay().value(), 0.5);
        Quantity mean = loop.interfaceFigures().delay();
        assertEquals(5.03125, mean.value(), mean.uncertainty());
        assertEquals(0.03125, mean.value() - own(0).delay().value(), 0.0003);
        assertEquals(0.03125, own(1).delay().value() - mean.value(), 0.0003);
        assertEquals(0, loop.interfaceFigures().clockPpm(), 5);
    }

    @Test
    void theResponseIsThatOfTheFilter() {
        for (int c = 0; c < 2; c++) {
            InterfaceFigures.Curve curve = own(c).response();
            double[] hz = curve.frequencyHz();
            assertTrue(hz[0] < 40 && hz[hz.length - 1] > 6000);
            for (int i = 0; i < hz.length; i++) {
                if (hz[i] >= 40 && hz[i] <= 6000) {
                    double want = filterDb(hz[i]) - filterDb(1000);
                    assertEquals(want, curve.magnitudeDb()[i], 0.15, hz[i] + " Hz");
                }
            }
        }
    }

    /**
     * The filter is symmetric and so turns no phase: beside a delay that is the same on both
     * channels the right one's phase falls by 360° a turn of 62.5 µs, through many half turns.
     */
    @Test
    void thePhaseIsThatOfTheDelayBetweenTheChannels() {
        double[] hz = own(0).response().frequencyHz();
        double[] left = own(0).response().phaseDegrees();
        double[] right = own(1).response().phaseDegrees();
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < hz.length; i++) {
            if (hz[i] >= 200 && hz[i] <= 6000) {
                assertEquals(-360 * hz[i] * 62.5e-6, right[i] - left[i], 3, hz[i] + " Hz");
                sum += left[i] * hz[i];
                squares += hz[i] * hz[i];
            }
        }
        for (int i = 0; i < hz.length; i++) {
            if (hz[i] >= 200 && hz[i] <= 6000) {
                assertEquals(sum / squares * hz[i], left[i], 3, hz[i] + " Hz");
            }
        }
    }

    /** White noise of rms s has 2·s²/rate in 1 Hz, here in all bands between 50 Hz and 7 kHz. */
    @Test
    void theNoiseIsToldOverFrequency() {
        for (int c = 0; c < 2; c++) {
            double want =
                    10 * Math.log10(2 * NOISE * NOISE / RATE)
                            - 20 * Math.log10(peak(c))
                            + 10 * Math.log10(2);
            InterfaceFigures.Density noise = own(c).noise();
            double sum = 0;
            double width = 0;
            for (int i = 0; i < noise.levelDb().length; i++) {
                double from = noise.edgesHz()[i];
                double to = noise.edgesHz()[i + 1];
                if (from > 50 && to < 7000) {
                    sum += Math.pow(10, noise.levelDb()[i] / 10) * (to - from);
                    width += to - from;
                }
                assertTrue(from < 1000 || to / from < Math.pow(2, 1.0 / 24) + 0.01);
            }
            assertTrue(width > 6500, "only " + width + " Hz");
            assertEquals(want, 10 * Math.log10(sum / width), 0.3);
        }
    }

    /** ¼·c·A² over 1 + ¾·c·A²: at −6 dB a quarter of that at 0 dB. */
    @Test
    void distortionIsToldStepByStep() {
        InterfaceFigures.Ladder ladder = own(0).ladders().get(0);
        assertEquals(1, own(0).ladders().size());
        assertEquals(1000, ladder.frequencyHz());
        double edge = Math.pow(10, filterDb(1000) / 10) * PEAK * PEAK;
        for (int i = 0; i < 2; i++) {
            InterfaceFigures.Step step = ladder.steps().get(i);
            double square = edge * Math.pow(10, step.recordLevelDb() / 10);
            double k3 = 100 * CUBE * square / 4 / (1 + 0.75 * CUBE * square);
            assertEquals(k3, step.k3AtMostPercent(), 0.01);
            // none of the second: what is told is the bound that the noise sets
            assertTrue(step.k2AtMostPercent() < 0.02, step.toString());
        }
    }

    /** 0.002 is −54 dB; right into left there is none. */
    @Test
    void crosstalkIsToldBothWays() {
        double want = 20 * Math.log10(LEAK * GAIN[1] * PEAK) + filterDb(1000);
        double db = want - 20 * Math.log10(peak(1));
        assertEquals(db, loop.interfaceFigures().crosstalkLeftToRight().value(), 0.2);
        assertFalse(loop.interfaceFigures().crosstalkRightToLeft().isKnown());
    }

    @Test
    void whatOnlyTapeHasIsNotTold() {
        assertFalse(loop.channels().azimuth().isKnown());
        assertTrue(loop.channels().azimuth().reason().startsWith("No tape"));
        assertEquals(List.of(), loop.dropouts());
        assertEquals(List.of(), loop.losses());
        assertTrue(
                loop.health().stream().noneMatch(n -> n.code().startsWith("distortion")),
                loop.health().toString());
        assertNull(heard.interfaceFigures());
        assertNull(heard.interfaceShare());
    }

    /** The machine's own response is flat; what the filter took is given back. */
    @Test
    void theResponseIsTheMachinesAlone() {
        var told = without.response().get(0);
        var all = heard.response().get(0);
        for (int i = 0; i < told.frequencyHz().length; i++) {
            double hz = told.frequencyHz()[i];
            if (hz >= 60 && hz <= 6000) {
                assertEquals(0, told.magnitudeDb()[i], 0.25, hz + " Hz");
                double filter = filterDb(hz) - filterDb(1000);
                assertEquals(all.magnitudeDb()[i] - filter, told.magnitudeDb()[i], 0.15);
            }
        }
        InterfaceShare.ChannelCurve curve = without.interfaceShare().responses().get(0);
        assertEquals("left", curve.channel());
        assertEquals(own(0).response().magnitudeDb(), curve.magnitudeDb());
        assertEquals(2, without.interfaceShare().responses().size());
    }

    /**
     * Powers of independent noises add: the share of the interface is n² of n² + (g·h·m)², h being
     * its filter's gain. A mean of ten bands of a third of an octave.
     */
    @Test
    void theNoiseIsTheMachinesAlone() {
        for (int c = 0; c < 2; c++) {
            NoiseSpectrum all = heard.noise().get(c).spectrum();
            NoiseSpectrum rest = without.noise().get(c).spectrum();
            double want = 0;
            double got = 0;
            int bands = 0;
            for (int i = 0; i < all.frequencyHz().length; i++) {
                double hz = all.frequencyHz()[i];
                if (hz > 450 && hz < 4500) {
                    double machine = GAIN[c] * MACHINE_NOISE * Math.pow(10, filterDb(hz) / 20);
                    want -= 10 * Math.log10(1 + NOISE * NOISE / (machine * machine));
                    got += rest.levelDb()[i] - all.levelDb()[i];
                    bands++;
                }
            }
            assertEquals(10, bands);
            assertEquals(want / bands, got / bands, 0.3);
        }
    }

    /** Of tape that comes back as loud as the interface's own loop nothing is said of gain. */
    @Test
    void theLoopbackIsNamedAndItsGainIsAsItWas() {
        assertTrue(codes(without).contains("loopback-used"));
        assertFalse(codes(without).contains("interface-gain-changed"));
    }

    private static List<String> codes(Results results) {
        return results.health().stream().map(HealthNote::code).toList();
    }

    /** What was taken out of what: each entry names its figure, and the delays their fate. */
    @Test
    void theDelaysAreAmongWhatWasTakenOut() {
        List<InterfaceShare.Entry> entries = without.interfaceShare().entries();
        InterfaceShare.Entry delay = named(entries, "Delay");
        assertEquals(5.03125, delay.own(), 0.05);
        assertEquals(105.03125, delay.heard(), 0.2);
        assertEquals("taken out of the delay of the heads", delay.treatment());
        InterfaceShare.Entry between = named(entries, "Interchannel delay, + right late");
        assertEquals(62.5, between.own(), 0.5);
        assertEquals(62.5, between.heard(), 1);
        assertEquals(0, without.channels().interchannelDelay().value(), 1);
        assertFalse(delay.limits() || between.limits());
    }

    private static InterfaceShare.Entry named(List<InterfaceShare.Entry> entries, String figure) {
        return entries.stream().filter(e -> e.figure().equals(figure)).findFirst().orElseThrow();
    }
}
