package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.tone.ReferenceLevels;
import org.junit.jupiter.api.Test;

/** Cues of minutes, as programmes of others may have them: memory does not grow with them. */
class LongCueTest {

    private static final int RATE = 8000;
    private static final int HZ = 1000;
    private static final double AMPLITUDE = 0.1;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    905L * RATE,
                    -20,
                    null,
                    List.of(
                            new Cue.Tone("reference", ChannelSet.BOTH, RATE, 300L * RATE, HZ, 0),
                            new Cue.Silence("silence", ChannelSet.BOTH, 302L * RATE, 600L * RATE)));

    /** A tone that never ends; reads of more than a minute are refused. */
    private record Steady() implements AudioSource {

        @Override
        public int sampleRateHz() {
            return RATE;
        }

        @Override
        public int channels() {
            return 1;
        }

        @Override
        public long frames() {
            return SHEET.frames();
        }

        @Override
        public double[][] read(long startFrame, int count) {
            assertTrue(count <= 61 * RATE, () -> count + " frames are read at once");
            double[] x = new double[count];
            for (int i = 0; i < count; i++) {
                x[i] = AMPLITUDE * Math.sin(2 * Math.PI * HZ * (startFrame + i) / RATE);
            }
            return new double[][] {x};
        }

        @Override
        public String name() {
            return "steady";
        }

        @Override
        public void close() {
            // nothing is held open
        }
    }

    private static ProgrammeReturn heard() {
        Location location =
                new Location(
                        TimeMap.straight(0, 1, 905),
                        905,
                        0,
                        0,
                        List.of(1),
                        true,
                        true,
                        0,
                        905,
                        List.of());
        return new ProgrammeReturn(new Programme(SHEET, new Steady()), new Steady(), location);
    }

    @Test
    void theLevelOfALongToneIsReadFromItsBeginning() {
        ReferenceLevels levels = ReferenceLevels.measure(heard()).orElseThrow();
        assertEquals(AMPLITUDE * AMPLITUDE / 2, levels.power(0), 1e-6);
    }

    /** The silence begins at 302 s, and 0.15 s are kept clear of what lies before. */
    @Test
    void aMinuteOfALongSilenceIsHeld() {
        ProgrammeReturn.Span span = NoiseDensities.span(heard()).orElseThrow();
        assertEquals(302.15, span.from(), 1e-9);
        assertEquals(60, span.seconds(), 1e-9);
        NoiseDensities noise = NoiseDensities.measure(heard()).orElseThrow();
        assertEquals(60 * RATE, noise.samples()[0].length);
    }
}
