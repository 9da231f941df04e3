package offtape.core.programme;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.unit.TapeSpeed;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProgrammeSignalTest {

    private static final int RATE = 48_000;

    private final CueSheet sheet = new ProgrammePlan(new TapeSpeed(190.5), RATE, -18, true).sheet();
    private final ProgrammeSignal signal = new ProgrammeSignal(sheet);

    /**
     * A sine of peak A and frequency f under a fade moves by at most A·(2πf + π/2F)/fs from sample
     * to sample (F: length of the fade, whose raised cosine climbs by π/2F at most). A click would
     * move more.
     */
    @Test
    void nothingClicks() {
        for (Cue cue : sheet.cues()) {
            double[][] x = signal.read(cue.startFrame() - 1, (int) cue.frames() + 2);
            double most =
                    sheet.peakOf(levelDb(cue))
                            * (2 * Math.PI * highestHz(cue) + Math.PI / 0.02)
                            / RATE;
            for (double[] channel : x) {
                for (int i = 1; i < channel.length; i++) {
                    double step = Math.abs(channel[i] - channel[i - 1]);
                    assertTrue(step <= most, cue.id() + " jumps by " + step + " at " + i);
                }
            }
        }
    }

    /**
     * The first and the last 0.1 ms of a cue, where a missing fade would show, are near nothing.
     */
    @Test
    void partsBeginAndEndInSilence() {
        for (Cue cue : sheet.cues()) {
            double peak = sheet.peakOf(levelDb(cue));
            for (double[] channel : signal.read(cue.startFrame(), 5)) {
                assertTrue(
                        Arrays.stream(channel).map(Math::abs).max().orElseThrow() <= 1e-3 * peak);
            }
            for (double[] channel : signal.read(cue.endFrame() - 5, 5)) {
                assertTrue(
                        Arrays.stream(channel).map(Math::abs).max().orElseThrow() <= 1e-3 * peak);
            }
        }
    }

    @Test
    void betweenThePartsThereIsNothing() {
        long end = 0;
        for (Cue cue : sheet.cues()) {
            int gap = (int) (cue.startFrame() - end);
            assertArrayEquals(new double[2][gap], signal.read(end, gap));
            end = cue.endFrame();
        }
        assertArrayEquals(new double[2][100], signal.read(-100, 100));
        assertArrayEquals(new double[2][100], signal.read(sheet.frames(), 100));
    }

    /** With the reference at −14 dBFS the top of the ladder, 14 dB above, is full scale itself. */
    @Test
    void nothingExceedsFullScale() {
        CueSheet loud = new ProgrammePlan(new TapeSpeed(47.625), 44_100, -14, true).sheet();
        ProgrammeSignal loudSignal = new ProgrammeSignal(loud);
        assertEquals(1, loudSignal.peak(), 1e-15);
        double most = 0;
        for (Cue.Ladder cue : loud.cues(Cue.Ladder.class).toList()) {
            for (double[] channel : loudSignal.read(cue.startFrame(), (int) cue.frames())) {
                most = Math.max(most, Arrays.stream(channel).map(Math::abs).max().orElseThrow());
            }
        }
        assertTrue(most <= 1 && most > 0.999, "peak " + most);
    }

    /** 1 kHz has 48 samples a cycle: over whole cycles the mean square is A²/2 exactly. */
    @Test
    void ladderLevelsAreExact() {
        Cue.Ladder ladder = sheet.cues(Cue.Ladder.class).findFirst().orElseThrow();
        for (Cue.Step step : ladder.steps()) {
            double[] x = signal.read(step.startFrame() + 4800, 4800)[0];
            double peak = Math.sqrt(2 * Arrays.stream(x).map(v -> v * v).sum() / x.length);
            assertEquals(step.levelDb() - 18, 20 * Math.log10(peak), 1e-10);
        }
    }

    /** −18 dB re a full-scale sine is a peak of 10^(−18/20) = 0.12589. */
    @Test
    void referenceHasItsLevel() {
        double[][] x = signal.read(cue("reference").startFrame() + 4800, 4800);
        double peak = Math.sqrt(2 * Arrays.stream(x[1]).map(v -> v * v).sum() / 4800);
        assertPublished(0.12589, peak, 5e-6, 0, "peak");
        assertArrayEquals(x[0], x[1]);
    }

    /** A·sin(2π f1 T/ln(f2/f1) · ((f2/f1)^(t/T) − 1)) between the fades. */
    @ParameterizedTest
    @ValueSource(strings = {"sweep-low", "sweep-reference"})
    @Source("Farina 2000, equation of the exponential sweep")
    void sweepsFollowTheirEquation(String id) {
        Cue.Sweep s = (Cue.Sweep) cue(id);
        double seconds = s.frames() / (double) RATE;
        double ratio = s.endHz() / s.startHz();
        int fadeIn = RATE / 10;
        double[] x = signal.read(s.startFrame(), (int) s.frames())[0];
        for (int i = fadeIn; i < x.length - RATE / 100; i += 7) {
            double t = (double) i / RATE;
            double phase =
                    2
                            * Math.PI
                            * s.startHz()
                            * seconds
                            / Math.log(ratio)
                            * (Math.pow(ratio, t / seconds) - 1);
            double expected = Math.pow(10, (s.levelDb() - 18) / 20) * Math.sin(phase);
            // 2π · 18,000 cycles in double precision leave 1e-10 of a turn.
            assertEquals(expected, x[i], 1e-9);
        }
    }

    /** Upward zero crossings tell the frequency: 700 Hz mid-way at the start, 6 kHz at the end. */
    @Test
    void markersRiseAndFall() {
        assertEquals(700, crossingsHz(cue("start"), 0.5), 40);
        assertEquals(6000, crossingsHz(cue("end"), 0.5), 150);
        // A quarter in: √(700 · 6000) = 2049 Hz in both.
        assertEquals(2049, crossingsHz(cue("start"), 0.25), 60);
        assertEquals(2049, crossingsHz(cue("end"), 0.25), 60);
        assertEquals(2049, crossingsHz(cue("start"), 0.75), 60);
    }

    @Test
    void channelsSoundAlone() {
        double[][] left = signal.read(cue("left-only").startFrame(), 20_000);
        double[][] right = signal.read(cue("right-only").startFrame(), 20_000);
        assertArrayEquals(new double[20_000], left[1]);
        assertArrayEquals(new double[20_000], right[0]);
        assertArrayEquals(left[0], right[1]);
        assertTrue(Arrays.stream(left[0]).max().orElseThrow() > 0.125);
    }

    /** Blocks of any size give the same samples. */
    @Test
    void blocksJoin() {
        long start = cue("start").startFrame() - 50;
        double[][] whole = signal.read(start, 5000);
        for (int i = 0; i < 5000; i += 613) {
            int count = Math.min(613, 5000 - i);
            double[][] block = signal.read(start + i, count);
            for (int c = 0; c < 2; c++) {
                assertArrayEquals(Arrays.copyOfRange(whole[c], i, i + count), block[c]);
            }
        }
    }

    @Test
    void silenceHasNoPeak() {
        Cue silence = new Cue.Silence("quiet", ChannelSet.BOTH, 0, 100);
        CueSheet quiet = new CueSheet(RATE, 100, -18, null, List.of(silence));
        assertEquals(0, new ProgrammeSignal(quiet).peak(), 0);
        assertArrayEquals(new double[2][100], new ProgrammeSignal(quiet).read(0, 100));
    }

    private Cue cue(String id) {
        return sheet.cues().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
    }

    private static double levelDb(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return t.levelDb();
        }
        if (cue instanceof Cue.Sweep s) {
            return s.levelDb();
        }
        return cue instanceof Cue.Ladder ? ProgrammePlan.TOP_LADDER_DB : 0;
    }

    private static double highestHz(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return t.frequencyHz();
        }
        if (cue instanceof Cue.Sweep s) {
            return s.endHz();
        }
        return cue instanceof Cue.Ladder l ? l.frequencyHz() : 6000;
    }

    /** Mean frequency over 8 ms around a share of a cue, from upward zero crossings. */
    private double crossingsHz(Cue cue, double share) {
        int n = 384;
        double[] x = signal.read(cue.startFrame() + (long) (share * cue.frames()) - n / 2, n)[0];
        List<Double> crossings = new ArrayList<>();
        for (int i = 1; i < n; i++) {
            if (x[i - 1] < 0 && x[i] >= 0) {
                crossings.add(i - x[i] / (x[i] - x[i - 1]));
            }
        }
        double span = crossings.get(crossings.size() - 1) - crossings.get(0);
        return (crossings.size() - 1) * RATE / span;
    }
}
