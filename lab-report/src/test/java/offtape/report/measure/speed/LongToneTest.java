package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;

class LongToneTest {

    /** Eleven minutes, made as it is read: what is kept is bounded, and the figures hold. */
    @Test
    void longTonesTakeNoMoreRoom() {
        AudioSource source = new EndlessTone(8000, 660, Tones.wavering(1000, 0.4, 0.2, 4));
        Speed s = SpeedMeasure.of(ToneStream.of(source, 1, 659, 1000, 1004), List.of());
        assertEquals(0.4, s.deviation().value(), 0.0005);
        assertEquals(0.2, s.weightedPeak().value(), 0.002);
        assertEquals(0.2 * Math.sqrt(0.5), s.weightedRms().value(), 0.001);
        assertEquals(0, s.drift().value(), 0.001);
        assertTrue(s.trace().seconds().length <= 1200);
        assertTrue(s.readings().seconds().length <= 600);
        assertEquals(658, s.trace().seconds()[s.trace().seconds().length - 1], 4);
        assertEquals(658, s.readings().seconds()[s.readings().seconds().length - 1], 8);
        assertEquals(0.2, Arrays.stream(s.trace().highestPercent()).min().orElseThrow(), 0.001);
        assertTrue(s.notes().get(0).contains("first 10 minutes"), s.notes().toString());
    }
}
