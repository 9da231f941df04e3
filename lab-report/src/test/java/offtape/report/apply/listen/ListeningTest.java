package offtape.report.apply.listen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.align.Alignment;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.ItuBs1770;
import org.junit.jupiter.api.Test;

/** Two sounds made alike. */
class ListeningTest {

    private static final double[][] MUSIC = Sounds.music(2);

    private static Listening of(double[][] a, double[][] b, AlignmentSearch search) {
        return Listening.of(
                Sounds.stereo("a.wav", a),
                Sounds.stereo("b.wav", b),
                Sounds.choice(true, false),
                search);
    }

    /** 1.5 times is 20 lg 1.5 = 3.522 dB; dither moves a sample by at most one step and a half. */
    @Test
    void aLateAndLouderBIsBroughtToA() {
        Listening both = of(MUSIC, Sounds.moved(MUSIC, 1234, 1.5), Sounds.at(1234, 1.5));
        ListenFacts facts = both.facts();
        assertEquals(-3.522, facts.b().gainDb(), 0.001);
        assertEquals(0, facts.a().gainDb());
        assertEquals(facts.a().loudnessLufs() + 3.522, facts.b().loudnessLufs(), 0.001);
        assertEquals(1234, facts.time().delayFrames());
        assertEquals(1000 * 1234 / 48_000.0, facts.time().delayMs(), 1e-9);
        assertEquals(2, facts.seconds());
        assertFalse(facts.a().isDithered());
        assertTrue(facts.b().isDithered());
        assertEquals("blend", facts.switching());
        for (int i = 0; i < 2 * 96_000; i++) {
            assertEquals(Sounds.code(both.a(), i), Sounds.code(both.b(), i), 2);
        }
    }

    @Test
    void theLouderOneIsLoweredWhicheverItIs() {
        ListenFacts facts = of(Sounds.moved(MUSIC, 0, 2), MUSIC, Sounds.at(0, 0.5)).facts();
        assertEquals(-6.0206, facts.a().gainDb(), 0.0001);
        assertEquals(0, facts.b().gainDb());
    }

    /** What is heard has the loudness that was promised, measured anew from the packed samples. */
    @Test
    void bothAreHeardEquallyLoud() {
        double[][] other = Sounds.moved(MUSIC, 0, 0.7);
        Arrays.setAll(other[1], i -> 0.4 * other[1][i]);
        Listening both = of(MUSIC, other, Sounds.at(0, 1));
        assertEquals(loudness(both.a()), loudness(both.b()), 0.001);
        assertEquals(both.facts().b().loudnessLufs(), loudness(both.a()), 0.001);
    }

    private static double loudness(Pcm24 sound) {
        int frames = sound.bytes().length / 6;
        double[][] samples = new double[2][frames];
        for (int i = 0; i < 2 * frames; i++) {
            samples[i % 2][i / 2] = Sounds.code(sound, i) / 0x1p23;
        }
        ItuBs1770 meter = ItuBs1770.inFront(Sounds.RATE_HZ, 2);
        meter.add(samples);
        return meter.integratedLufs().orElseThrow();
    }

    @Test
    void theSameFileTwiceStaysAsItIsAndIsNoted() {
        Listening both = of(MUSIC, MUSIC, Sounds.at(0, 1));
        assertTrue(both.facts().isSame());
        assertArrayEquals(both.a().bytes(), both.b().bytes());
        assertEquals((int) (MUSIC[1][777] * 0x1p23), Sounds.code(both.a(), 2 * 777 + 1));
        assertTrue(both.facts().sentences().stream().anyMatch(s -> s.contains("to the last bit")));
    }

    @Test
    void anInvertedBIsToldAndTurnedOnlyIfWished() {
        double[][] turned = Sounds.moved(MUSIC, 10, -1);
        ListenFacts kept = of(MUSIC, turned, Sounds.at(10, -1)).facts();
        assertEquals("inverted", kept.time().polarity());
        assertEquals(-1, kept.likeness(), 1e-9);
        assertEquals("dip", kept.switching());
        ListenFacts right =
                Listening.of(
                                Sounds.stereo("a", MUSIC),
                                Sounds.stereo("b", turned),
                                Sounds.choice(true, true),
                                Sounds.at(10, -1))
                        .facts();
        assertTrue(right.time().isPolarityTurned());
        assertEquals(1, right.likeness(), 1e-9);
        assertEquals("blend", right.switching());
    }

    /** The common part of A from 100 on is what B has: it began 100 frames later. */
    @Test
    void onlyWhatBothHoldIsTaken() {
        double[][] late = new double[2][];
        Arrays.setAll(late, c -> Arrays.copyOfRange(MUSIC[c], 100, 90_000));
        ListenFacts facts = of(MUSIC, late, Sounds.at(-100, 1)).facts();
        assertEquals(100 / 48_000.0, facts.fromSeconds(), 1e-9);
        assertEquals(89_900 / 48_000.0, facts.seconds(), 1e-9);
        assertTrue(facts.isSame());
    }

    @Test
    void monoIsHeardOnBothSidesAgainstStereo() {
        MemoryAudio mono = new MemoryAudio("m", Sounds.RATE_HZ, MUSIC[0]);
        MemoryAudio twice = Sounds.stereo("s", new double[][] {MUSIC[0], MUSIC[0]});
        ListenFacts facts =
                Listening.of(mono, twice, Sounds.choice(false, false), Sounds.NONE).facts();
        assertEquals(2, facts.channels());
        assertTrue(facts.isSame());
        assertNull(facts.time());
    }

    /** Peak 2 and equal loudness: both come down by 6.02 dB and fit. */
    @Test
    void peaksBeyondFullScaleComeDownTogether() {
        double[][] high = Sounds.moved(MUSIC, 0, 1);
        high[0][5000] = 2;
        ListenFacts facts = of(high, MUSIC, Sounds.at(0, 1)).facts();
        assertEquals(0, facts.a().peakDbfs(), 1e-9);
        double common = facts.a().loudnessLufs() + facts.a().gainDb();
        assertEquals(common, facts.b().loudnessLufs() + facts.b().gainDb(), 1e-9);
        assertTrue(facts.b().gainDb() < -6);
    }

    @Test
    void clippingIsCounted() {
        double[][] cut = Sounds.moved(MUSIC, 0, 1);
        Arrays.fill(cut[0], 1000, 1006, 0.9999);
        Arrays.fill(cut[1], 2000, 2003, -0.9999);
        ListenFacts facts = of(MUSIC, cut, Sounds.at(0, 1)).facts();
        assertEquals(0, facts.a().clippedPlaces());
        assertEquals(1, facts.b().clippedPlaces());
    }

    /** A minute of quiet with ten loud seconds from 20 s on: half a minute that has them all. */
    @Test
    void theLoudestHalfMinuteIsTaken() {
        int rate = 8000;
        double[] x = new double[60 * rate];
        for (int i = 0; i < x.length; i++) {
            boolean isLoud = i >= 20 * rate && i < 30 * rate;
            x[i] = (isLoud ? 0.5 : 0.01) * Math.sin(2 * Math.PI * 500 * i / rate);
        }
        MemoryAudio sound = new MemoryAudio("long", rate, x);
        ListenFacts facts =
                Listening.of(sound, sound, Sounds.choice(false, false), Sounds.NONE).facts();
        assertEquals(30, facts.seconds());
        assertTrue(facts.fromSeconds() <= 20 && facts.fromSeconds() >= 0, "from");
    }

    /** Over the whole 1000 late; in the part, 3.5 s long from 1 s on, 20 frames later than that. */
    @Test
    void thePartIsBroughtInTimeByItself() {
        double[][] music = Sounds.music(6);
        double[][] late = Sounds.moved(music, 1020, 1);
        AlignmentSearch search =
                (a, b) -> {
                    boolean isWhole = a.frames() == music[0].length;
                    // half a second of B lies before the part
                    double start = isWhole ? 1000 : 24_000 + 20;
                    return new Alignment(start, 1, List.of(1.0, 1.0), 0, false);
                };
        ListenChoice part =
                new ListenChoice(
                        OptionalDouble.of(1), OptionalDouble.of(3.5), 16, false, true, false);
        ListenFacts facts =
                Listening.of(Sounds.stereo("a", music), Sounds.stereo("b", late), part, search)
                        .facts();
        assertTrue(facts.isSame());
        assertEquals(1000, facts.time().delayFrames());
        assertEquals(20, facts.time().partOffFrames());
    }
}
