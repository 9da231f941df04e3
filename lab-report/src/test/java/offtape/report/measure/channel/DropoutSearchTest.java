package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.report.result.Dropout;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Losses of level of every depth and length, and everything that is none. */
class DropoutSearchTest {

    private static final double[] DEPTHS_DB = {3, 3.3, 6, 30};
    private static final double[] LENGTHS_MS = {10, 12, 40, 1000};

    /** What the report states: depth, dB; length, ms or a tenth. */
    private static final double DEPTH_DB = 0.3;

    private static final double LENGTH_MS = 1.1;

    private record Planned(LongTone.Damage damage, double startSeconds, double milliseconds) {

        /**
         * The middle of a raised cosine lies at half the depth; 3 dB are reached earlier by the
         * share asin(1 − 2·3/depth)/(π/2) of half the edge.
         */
        static Planned of(int channel, double at, double ms, double depthDb, double edge) {
            double mark = depthDb > 3 ? 3 : depthDb / 2;
            double before = Math.asin(1 - 2 * mark / depthDb) / (Math.PI / 2) * edge / 2;
            double seconds = ms / 1000 - 2 * before;
            return new Planned(
                    new LongTone.Damage(channel, at + before, seconds, depthDb, edge), at, ms);
        }

        AssertionError missed() {
            return new AssertionError("missed: " + this);
        }

        boolean is(Dropout d) {
            String channel = damage.channel() == 0 ? "left" : "right";
            return d.channel().equals(channel) && Math.abs(d.atSeconds() - startSeconds) < 0.005;
        }
    }

    @ParameterizedTest
    @CsvSource({"44100, 3150, -58, 0", "48000, 1000, -45, 0.002", "96000, 10000, -58, 0.002"})
    void everyDepthAndLengthIsFoundAndRead(int rate, double hz, double hiss, double edge) {
        List<Planned> planned = new ArrayList<>();
        double at = 0.5;
        for (double depth : DEPTHS_DB) {
            for (double ms : LENGTHS_MS) {
                planned.add(Planned.of(planned.size() % 2, at, ms, depth, edge));
                at += ms / 1000 + 0.25;
            }
        }
        LongTone tone = new LongTone(rate, hz, at + 0.3).hiss(hiss).wow(0.5, 0.7);
        planned.forEach(p -> tone.damage(p.damage()));
        List<Dropout> found = DropoutSearch.find(tone.play(1)).dropouts();
        for (Planned p : planned) {
            Dropout d = found.stream().filter(p::is).findFirst().orElseThrow(p::missed);
            assertEquals(p.damage().depthDb(), d.depthDb(), DEPTH_DB, p.toString());
            double allowed = Math.max(LENGTH_MS, 0.1 * p.milliseconds());
            assertEquals(p.milliseconds(), d.milliseconds(), allowed, p.toString());
        }
        assertEquals(planned.size(), found.size());
    }

    @ParameterizedTest
    @CsvSource({"44100, 3150, 5", "48000, 1000, 6", "48000, 10000, 7"})
    void hissWowWavesOfLevelDriftAndClicksAreNone(int rate, double hz, long seed) {
        LongTone tone =
                new LongTone(rate, hz, 12).hiss(-45).wow(0.5, 0.5).level(1.5, -10).clicks(60);
        DropoutSearch.Found found = DropoutSearch.find(tone.play(seed));
        assertEquals(List.of(), found.dropouts());
        assertEquals(0, found.summary().perMinute().value());
        assertFalse(found.summary().deepest().isKnown());
    }

    /** Not deep or not long enough for the least that is listed. */
    @Test
    void shallowAndBriefOnesAreNotListed() {
        LongTone tone =
                new LongTone(16_000, 3150, 6)
                        .hiss(-58)
                        .damage(new LongTone.Damage(0, 2, 0.1, 2.5, 0.002))
                        .damage(new LongTone.Damage(0, 4, 0.007, 12, 0));
        assertEquals(List.of(), DropoutSearch.find(tone.play(2)).dropouts());
    }

    /** One of 3 dB at the bottom of a slow wave of level has its own depth. */
    @Test
    void aWaveOfLevelHidesNoDropout() {
        LongTone tone =
                new LongTone(16_000, 3150, 6)
                        .level(1.5, 0)
                        .damage(new LongTone.Damage(0, 1.5, 0.02, 3, 0))
                        .damage(new LongTone.Damage(1, 2.5, 0.02, 3, 0));
        List<Dropout> found = DropoutSearch.find(tone.play(3)).dropouts();
        assertEquals(2, found.size());
        assertEquals(3, found.get(0).depthDb(), DEPTH_DB);
        assertEquals(3, found.get(1).depthDb(), DEPTH_DB);
    }

    @Test
    void twoCloseTogetherAreTwo() {
        LongTone tone =
                new LongTone(16_000, 3150, 5)
                        .damage(new LongTone.Damage(0, 2, 0.02, 6, 0))
                        .damage(new LongTone.Damage(0, 2.035, 0.03, 10, 0));
        List<Dropout> found = DropoutSearch.find(tone.play(4)).dropouts();
        assertEquals(2, found.size());
        assertEquals(6, found.get(0).depthDb(), DEPTH_DB);
        assertEquals(30, found.get(1).milliseconds(), 3);
    }

    @Test
    void thoseOnBothChannelsAtOnceAreCommonAndCountOnce() {
        LongTone tone =
                new LongTone(16_000, 3150, 6)
                        .damage(new LongTone.Damage(0, 2, 0.05, 10, 0.002))
                        .damage(new LongTone.Damage(1, 2.02, 0.05, 6, 0.002))
                        .damage(new LongTone.Damage(1, 4, 0.05, 6, 0.002));
        DropoutSearch.Found found = DropoutSearch.find(tone.play(5));
        assertEquals(3, found.dropouts().size());
        assertTrue(found.dropouts().get(0).common() && found.dropouts().get(1).common());
        assertFalse(found.dropouts().get(2).common());
        double minutes = found.summary().searchedSeconds() / 60;
        assertEquals(2 / minutes, found.summary().perMinute().value(), 1e-9);
    }

    /** The first and last 50 ms are the tone's fades; what lies beyond is seen in part. */
    @Test
    void theEndsOfTheToneAreSearched() {
        LongTone tone =
                new LongTone(16_000, 3150, 5)
                        .damage(new LongTone.Damage(0, 0.08, 0.02, 9, 0))
                        .damage(new LongTone.Damage(0, 4.89, 0.02, 9, 0));
        List<Dropout> found = DropoutSearch.find(tone.play(6)).dropouts();
        assertEquals(2, found.size());
        assertEquals(9, found.get(0).depthDb(), DEPTH_DB);
        assertEquals(9, found.get(1).depthDb(), DEPTH_DB);
    }

    @Test
    void noiseInPlaceOfAToneHasNoDropouts() {
        LongTone tone = new LongTone(16_000, 3150, 6).hiss(10);
        DropoutSearch.Found found = DropoutSearch.find(tone.play(7));
        assertEquals(List.of(), found.dropouts());
        assertEquals(0, found.summary().searchedSeconds());
        assertEquals(Optional.empty(), Optional.ofNullable(found.summary().perMinute().value()));
    }
}
