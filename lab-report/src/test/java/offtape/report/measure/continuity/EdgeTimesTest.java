package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import offtape.report.locate.LateMoment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Beginnings and ends of tones, known to some tenths of a millisecond. */
class EdgeTimesTest {

    private static final int RATE = ShortProgramme.RATE;
    private static final double KNOWN_S = 4e-4;

    private static Cue tone(String id, double at, double seconds, double hz) {
        long start = Math.round(at * RATE);
        return new Cue.Tone(id, ChannelSet.BOTH, start, Math.round(seconds * RATE), hz, 0);
    }

    /** The sound as it was sent, taken to lie some seconds before or after its place. */
    private static List<LateMoment> late(Programme programme, double seconds, double speed) {
        double[][] x = programme.audio().read(-RATE, (int) programme.audio().frames() + 2 * RATE);
        MemoryAudio heard = new MemoryAudio("return", RATE, x);
        return EdgeTimes.of(ShortProgramme.there(programme, heard, 1 - seconds, speed));
    }

    /** Of markers, tones and the steps of a ladder; not of the sweep, whose ends are steep. */
    @ParameterizedTest
    @CsvSource({"1, 1", "0.985, 0.985", "1.02, 1.02", "1, 1.004"})
    void everyEdgeOfToneAndMarker(double speed, double taken) {
        MemoryAudio heard = ShortProgramme.heard(speed, 0.4);
        List<LateMoment> moments = EdgeTimes.of(ShortProgramme.there(heard, taken));
        double[] edges = {
            0.25, 0.75, 1, 2, 2.3, 2.9, 3.1, 3.7, 3.9, 4.5, 8.1, 10.1, 10.4, 11.6, 11.9, 12.5, 12.8,
            13.3
        };
        assertEquals(edges.length, moments.size());
        for (int i = 0; i < edges.length; i++) {
            assertEquals(edges[i], moments.get(i).programmeSeconds(), 1e-9);
            double truth = ShortProgramme.BEFORE_S + edges[i] / speed - edges[i];
            assertEquals(truth, moments.get(i).lateSeconds(), KNOWN_S, "edge " + i);
        }
        assertEquals("start", moments.get(0).part());
        assertEquals("reference", moments.get(3).part());
        assertEquals("ladder", moments.get(6).part());
        assertEquals("end", moments.get(17).part());
    }

    /** The search goes 0.2 s to either side. */
    @ParameterizedTest
    @CsvSource({"0.198, 2", "-0.198, 2", "0.203, 0", "-0.203, 0"})
    void whatIsFartherAwayIsNotFound(double seconds, int count) {
        List<LateMoment> moments = late(ShortProgramme.of(3, tone("a", 1, 1, 1000)), seconds, 1);
        assertEquals(count, moments.size());
        // the recording begins a second before the programme
        moments.forEach(m -> assertEquals(1, m.lateSeconds(), KNOWN_S));
    }

    /**
     * Of a return a tenth slow 0.2 s of the programme take 0.22 s: a tone that comes back 0.215 s
     * from where it is looked for is found, and so is its end.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.215, -0.215})
    void aSlowReturnIsSearchedAsFar(double seconds) {
        double slow = 1 / 1.1;
        Programme sent = ShortProgramme.of(3, tone("a", 1, 0.5, 1000));
        Programme played = ShortProgramme.of(3.3, tone("a", 1.1, 0.55, 1000));
        MemoryAudio heard = (MemoryAudio) played.audio();
        List<LateMoment> moments = EdgeTimes.of(ShortProgramme.there(sent, heard, -seconds, slow));
        assertEquals(2, moments.size());
        assertEquals(0.1, moments.get(0).lateSeconds(), 1e-3);
        assertEquals(0.15, moments.get(1).lateSeconds(), 1e-3);
    }

    /** Bass is delayed by its filters: 300 Hz is too low, for tones and ladders. */
    @ParameterizedTest
    @CsvSource({"300, 0", "301, 4"})
    void lowTonesHaveNoEdges(double hz, int count) {
        Cue ladder =
                new Cue.Ladder(
                        "ladder",
                        ChannelSet.BOTH,
                        2 * RATE,
                        RATE,
                        hz,
                        List.of(new Cue.Step(2 * RATE, RATE, 0)));
        Programme programme = ShortProgramme.of(4, tone("a", 0.5, 1, hz), ladder);
        assertEquals(count, late(programme, 0.01, 1).size());
    }

    /** An end 20 ms before a beginning is the same edge, 40 ms before it another. */
    @ParameterizedTest
    @CsvSource({"0.02, 3", "0.04, 4"})
    void edgesCloseTogetherAreOne(double apart, int count) {
        Programme programme =
                ShortProgramme.of(4, tone("a", 1, 1, 1000), tone("b", 2 + apart, 1, 1000));
        List<LateMoment> moments = late(programme, 0, 1);
        assertEquals(count, moments.size());
        assertEquals(2, moments.get(1).programmeSeconds(), 1e-9);
    }

    /** An edge in noise as strong as the tone is not heard clearly. */
    @Test
    void whatLiesUnderNoiseIsNotTold() {
        Programme programme = ShortProgramme.of(3, tone("a", 1, 1, 1000));
        double[][] x = programme.audio().read(0, 3 * RATE);
        Random random = new Random(3);
        for (int i = 0; i < x[0].length; i++) {
            x[0][i] += 0.1 * random.nextGaussian();
        }
        MemoryAudio heard = new MemoryAudio("return", RATE, x[0]);
        assertTrue(EdgeTimes.of(ShortProgramme.there(programme, heard, 0, 1)).isEmpty());
    }
}
