package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;

/** Why a programme of 20 s was not found. */
class NotFoundTest {

    private static final int RATE = 8000;

    private static final Cue MARKER = new Cue.Marker("start", ChannelSet.BOTH, RATE, RATE / 2);

    private static NotFound of(double seconds, double sample, Double mmPerS, Cue... cues) {
        double[] x = new double[(int) (seconds * RATE)];
        x[x.length - 1] = sample;
        CueSheet sheet = new CueSheet(RATE, 20 * RATE, -18, mmPerS, List.of(cues));
        double[][] none = new double[2][20 * RATE];
        return new NotFound(
                new Programme(sheet, new MemoryAudio("p.wav", RATE, none)),
                new MemoryAudio("r.wav", RATE, new double[x.length], x));
    }

    /** Four tenths of the programme's length are the least that can be known again. */
    @Test
    void aRecordingThatIsTooShortIsToldSo() {
        String said = of(7.9, 0.5, null).refusal().getMessage();
        assertTrue(said.contains("r.wav") && said.contains("7.9 s") && said.contains("20"), said);
        String longer = of(8.1, 0.5, null).refusal().getMessage();
        assertFalse(longer.contains("8.1 s"), longer);
        assertEquals(longer, of(8, 0.5, null).refusal().getMessage());
    }

    /** −90 dBFS is 3.2e-5; the second channel's last sample is beyond the first block. */
    @Test
    void silenceIsToldFromAnotherSound() {
        String silent = of(12, 3.1e-5, null).refusal().getMessage();
        String other = of(12, 3.3e-5, null).refusal().getMessage();
        assertFalse(silent.equals(other));
        assertEquals(silent, of(12, 0, null).refusal().getMessage());
        assertEquals(silent, of(12, 3.2e-5, null).refusal().getMessage());
        assertEquals(other, of(12, -0.5, null).refusal().getMessage());
        assertTrue(silent.contains("silen"), silent);
    }

    @Test
    void aStretchedReturnIsToldByHowMuchAndWhichWay() {
        String longer = of(20, 0, null).stretched(0.02).getMessage();
        String shorter = of(20, 0, null).stretched(-0.02).getMessage();
        assertTrue(longer.contains("2.0 %") && longer.contains("longer"), longer);
        assertTrue(shorter.contains("2.0 %") && shorter.contains("shorter"), shorter);
    }

    @Test
    void aReturnFromItsEndIsToldSo() {
        String said = of(20, 0.5, null).backwards().getMessage();
        assertTrue(said.startsWith("r.wav holds the programme backwards"), said);
    }

    @Test
    void aReturnWithoutMarkersIsToldWhatIsMissing() {
        CoarseSearch.Match right = new CoarseSearch.Match(0, 1, 1);
        Anchor weak = new Anchor(1.25, 1.25, new int[] {0, 0}, 0.1);
        String sheet = of(20, 0, null).withoutMarkers(right, List.of()).getMessage();
        String cut = of(20, 0, null, MARKER).withoutMarkers(right, List.of()).getMessage();
        String heard = of(20, 0, null, MARKER).withoutMarkers(right, List.of(weak)).getMessage();
        assertTrue(sheet.contains("cue sheet names no marker"), sheet);
        assertTrue(cut.startsWith("r.wav is cut short"), cut);
        assertTrue(heard.startsWith("r.wav sounds like the programme, but none of"), heard);
        assertTrue(heard.contains("Record the whole programme again"), heard);
    }

    /** At twice the speed the markers may be beyond the band: the speed is what to say. */
    @Test
    void aWrongSpeedExplainsMissingMarkers() {
        CoarseSearch.Match fast = new CoarseSearch.Match(0, 0.5, 1);
        String said = of(20, 0, 190.5, MARKER).withoutMarkers(fast, List.of()).getMessage();
        assertTrue(said.contains("for 19.05 cm/s and ran at 38.1 cm/s"), said);
    }
}
