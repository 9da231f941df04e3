package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every steady tone of a recording, each once and in order. */
class ToneFinderTest {

    private static final int RATE = 4000;

    /** "frequency:seconds" one after another, 0 for a pause; level 0 dB, or ":dB". */
    private static MemoryAudio tape(String words) {
        TapeBench bench = new TapeBench().rate(RATE);
        for (String word : words.split(" ")) {
            String[] w = word.split(":");
            double hz = Double.parseDouble(w[0]);
            double seconds = Double.parseDouble(w[1]);
            double db = w.length > 2 ? Double.parseDouble(w[2]) : 0;
            bench = hz > 0 ? bench.tone(hz, db, seconds) : bench.gap(seconds);
        }
        return bench.noise(-60).play();
    }

    private static String told(List<HeardTone> tones) {
        return tones.stream()
                .map(t -> Math.round(t.hz()) + " from " + Math.round(t.fromSeconds()))
                .collect(Collectors.joining(", "));
    }

    /** A gap of up to 0.6 s at one level is a dropout; other frequencies and steps are not. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0:1 1000:2 0:1 400:3 0:1|1000 from 1, 400 from 4",
                "1000:2 0:0.4 1000:2 0:1|1000 from 0",
                "1000:2 0:1 1000:2 0:1|1000 from 0, 1000 from 3",
                "1000:2 1030:2 0:1|1000 from 0, 1030 from 2",
                "400:2:-10 400:2 400:2:-5 0:1|400 from 0, 400 from 2, 400 from 4",
                "1000:2 0:0.4 400:2 0:0.6 1000:2 0:1|1000 from 0, 400 from 2, 1000 from 5",
                "0:1 1000:1 0:1|''"
            })
    void everyToneIsFoundOnce(String tape, String found) {
        MemoryAudio sound = tape(tape);
        assertEquals(found.equals("''") ? "" : found, told(ToneFinder.in(sound, 0, 100)), tape);
    }

    /** Of a tone that begins before the stretch the part within it is read. */
    @Test
    void onlyTheStretchIsRead() {
        MemoryAudio sound = tape("1000:4 0:1 400:4 0:1");
        List<HeardTone> some = ToneFinder.in(sound, 2, 7);
        assertEquals("1000 from 2, 400 from 5", told(some));
        assertEquals(2, some.get(0).fromSeconds(), 0.1);
        assertEquals(7, some.get(1).toSeconds(), 0.1);
    }

    /** What never ends below 200 Hz is hum, unless there is nothing else. */
    @Test
    void whatNeverEndsIsATapeOfOneTone() {
        assertEquals("100 from 0", told(ToneFinder.in(tape("100:5"), 0, 100)));
        MemoryAudio sound =
                new TapeBench().rate(RATE).gap(1).tone(1000, 0, 3).gap(1).hum(-15).play();
        assertEquals("1000 from 1", told(ToneFinder.in(sound, 0, 100)));
    }
}
