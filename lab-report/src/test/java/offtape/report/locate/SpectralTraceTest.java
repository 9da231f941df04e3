package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bands lie three to an octave from 80 Hz on: band b at 80·2^(b/3) Hz, so 1280 Hz is band 12. */
class SpectralTraceTest {

    private static Scene tone(double hz) {
        return new Scene(1).with(new Scene.Part(0, 1, hz));
    }

    private static double[] at(SpectralTrace trace, int hop) {
        double[] out = new double[trace.bandCount()];
        for (int b = 0; b < out.length; b++) {
            out[b] = trace.band(b)[hop];
        }
        return out;
    }

    /** From 80 Hz to 16 kHz are 7.64 octaves: 23 steps of a third, 24 bands. */
    @Test
    void aVectorStandsEveryTwentyMilliseconds() {
        SpectralTrace trace = tone(1280).trace();
        assertEquals(51, trace.hops());
        assertEquals(24, trace.bandCount());
        assertEquals(0.02, trace.hopSeconds());
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 12, 18})
    void aToneIsOfItsBand(int band) {
        double[] colour = at(tone(80 * Math.pow(2, band / 3.0)).trace(), 25);
        // a window's main lobe reaches into the bands beside, least where bands are wide
        assertTrue(colour[band] > (band < 10 ? 0.88 : 0.98), "only " + colour[band]);
        double squares = 0;
        for (double v : colour) {
            squares += v * v;
        }
        assertEquals(1, squares, 1e-6);
    }

    /** Half way between two bands, by the logarithm, the power is halved between them. */
    @Test
    void aToneBetweenTwoBandsIsOfBoth() {
        double[] colour = at(tone(80 * Math.pow(2, 18.5 / 3)).trace(), 25);
        assertEquals(Math.sqrt(0.5), colour[18], 0.02);
        assertEquals(Math.sqrt(0.5), colour[19], 0.02);
    }

    @Test
    void channelsAddInPower() {
        double[] low = tone(1280).sound();
        double[] high = tone(5120).sound();
        SpectralTrace trace = SpectralTrace.of(new MemoryAudio("r", Scene.RATE, low, high));
        assertEquals(Math.sqrt(0.5), at(trace, 25)[12], 0.01);
        assertEquals(Math.sqrt(0.5), at(trace, 25)[18], 0.01);
        double[] silence = new double[low.length];
        SpectralTrace one = SpectralTrace.of(new MemoryAudio("r", Scene.RATE, silence, low));
        assertEquals(1, one.likeness(25, tone(1280).trace(), 25), 1e-6);
        SpectralTrace both = SpectralTrace.of(new MemoryAudio("r", Scene.RATE, low, low, high));
        assertEquals(Math.sqrt(2 / 3.0), at(both, 25)[12], 0.01);
    }

    /** A window of 1024 samples reaches 32 ms to either side: from 0.5 s on, vector 24 hears it. */
    @Test
    void aVectorIsOfTheMomentAroundIt() {
        SpectralTrace trace = new Scene(1).with(new Scene.Part(0.5, 1, 1280)).trace();
        assertFalse(trace.sounds(23));
        assertTrue(trace.sounds(24));
        assertEquals(27, trace.sounding(0, 51));
        assertEquals(2, trace.sounding(-5, 26));
        assertEquals(1, trace.sounding(50, 99));
    }

    @Test
    void likenessKnowsColourButNotLevel() {
        SpectralTrace loud = tone(1280).trace();
        SpectralTrace quiet = new Scene(1).with(0.001, List.of(new Scene.Part(0, 1, 1280))).trace();
        assertEquals(1, loud.likeness(25, quiet, 30), 1e-4);
        assertEquals(0, loud.likeness(25, tone(5120).trace(), 25), 0.01);
        assertEquals(0, loud.likeness(-1, quiet, 25));
        assertEquals(0, loud.likeness(51, quiet, 25));
        assertEquals(0, loud.likeness(25, quiet, -1));
        assertEquals(0, loud.likeness(25, quiet, 51));
    }

    /** Of four vectors two of one colour and two of another have the mean's direction: 45°. */
    @Test
    void aCoarserTraceHasTheMeanColour() {
        SpectralTrace fine =
                new Scene(1)
                        .with(new Scene.Part(0, 0.43, 1280), new Scene.Part(0.43, 1, 5120))
                        .trace();
        SpectralTrace coarse = fine.coarser(4);
        assertEquals(13, coarse.hops());
        assertEquals(0.08, coarse.hopSeconds(), 1e-12);
        // vectors 20 to 23, from 0.40 to 0.46 s, lie evenly about the change at 0.43 s
        assertEquals(1, at(coarse, 2)[12], 0.02);
        assertEquals(1, at(coarse, 7)[18], 0.02);
        double before = at(coarse, 5)[12];
        double after = at(coarse, 5)[18];
        assertEquals(Math.sqrt(0.5), before, 0.03);
        assertEquals(Math.sqrt(0.5), after, 0.03);
    }

    /** 75 dB under the loudest part is silence. */
    @ParameterizedTest
    @ValueSource(ints = {70, 80})
    void quietPartsAreSilence(int below) {
        Scene scene = new Scene(2).with(new Scene.Part(0, 0.9, 1280));
        scene.with(0.1 * Math.pow(10, -below / 20.0), List.of(new Scene.Part(1.1, 2, 1280)));
        SpectralTrace kept = scene.trace().withoutSilence();
        assertTrue(kept.sounds(20));
        assertEquals(below < 75, kept.sounds(75));
        assertEquals(scene.trace().hops(), kept.hops());
        SpectralTrace coarse = scene.trace().coarser(5).withoutSilence();
        assertTrue(coarse.sounds(4));
        assertEquals(below < 75, coarse.sounds(15));
    }

    /** What holds nothing is like nothing, and a number all the same. */
    @Test
    void silenceIsLikeNothing() {
        SpectralTrace tone = tone(1280).trace();
        SpectralTrace silence = new Scene(1).trace();
        assertEquals(0, tone.likeness(25, silence, 25), 0);
        assertEquals(0, tone.coarser(5).likeness(5, silence.coarser(5), 5), 0);
    }

    @Test
    void backwardsTheLastComesFirst() {
        SpectralTrace trace =
                new Scene(1)
                        .with(new Scene.Part(0, 0.3, 1280), new Scene.Part(0.3, 1, 5120))
                        .trace();
        SpectralTrace back = trace.backwards();
        for (int h : new int[] {0, 5, 40, 50}) {
            assertEquals(1, trace.likeness(h, back, 50 - h), 1e-6);
        }
        assertEquals(0, trace.likeness(5, back, 5), 0.01);
        // what counts as silence goes with it
        SpectralTrace half = new Scene(1).with(new Scene.Part(0, 0.3, 1280)).trace();
        assertFalse(half.backwards().withoutSilence().sounds(10));
        assertTrue(half.backwards().withoutSilence().sounds(45));
    }

    @Test
    void theBeginningIsTheFirstVectors() {
        SpectralTrace trace = tone(1280).trace();
        assertEquals(10, trace.beginning(10).hops());
        assertEquals(1, trace.beginning(10).likeness(9, trace, 9), 1e-6);
    }

    /** Tape at half the speed takes twice the time and plays an octave, three bands, lower. */
    @Test
    void stretchingLengthensAndLowers() {
        SpectralTrace half = tone(5120).trace().stretched(2);
        assertEquals(102, half.hops());
        assertEquals(1, half.likeness(50, tone(2560).trace(), 25), 0.01);
        SpectralTrace twice = tone(1280).trace().stretched(0.5);
        assertEquals(26, twice.hops());
        assertEquals(1, twice.likeness(12, tone(2560).trace(), 25), 0.02);
        assertEquals(1, tone(5120).trace().stretched(1).likeness(12, tone(5120).trace(), 25), 1e-6);
        // the lowest band is one of them
        assertEquals(1, tone(80).trace().stretched(1).likeness(12, tone(80).trace(), 25), 1e-6);
    }

    @Test
    void aStretchedTraceKeepsTheOrderOfItsParts() {
        SpectralTrace trace =
                new Scene(1)
                        .with(new Scene.Part(0, 0.3, 2560), new Scene.Part(0.3, 1, 5120))
                        .trace();
        SpectralTrace longer = trace.stretched(1.25);
        SpectralTrace low = tone(2560 / 1.25).trace();
        // 0.3 s become 0.375 s, vector 18.75
        assertTrue(longer.likeness(16, low, 25) > 0.98);
        assertTrue(longer.likeness(21, low, 25) < 0.1);
    }
}
