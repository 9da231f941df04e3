package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which tone of a programme tells the speed, on programmes that return as they are. */
class SpeedToneTest {

    private static final int RATE = 32_000;

    private static Cue.Tone tone(ChannelSet channels, double from, double seconds, double hz) {
        return new Cue.Tone(
                "tone", channels, Math.round(from * RATE), Math.round(seconds * RATE), hz, 0);
    }

    private static ProgrammeReturn returned(double gain, double delay, Cue... cues) {
        CueSheet sheet = new CueSheet(RATE, 9L * RATE, -18, null, List.of(cues));
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        int shift = (int) Math.round(delay * RATE);
        double[][] heard = new double[2][(int) sheet.frames() + shift];
        for (int c = 0; c < 2; c++) {
            double[] in = sound[c];
            Arrays.setAll(heard[c], i -> i < shift ? 0 : gain * in[i - shift]);
        }
        Programme programme = new Programme(sheet, new MemoryAudio("p", RATE, sound));
        MemoryAudio recording = new MemoryAudio("r", RATE, heard[0], heard[1]);
        return new ProgrammeReturn(
                programme, recording, located(recording, TimeMap.straight(delay, 1, 9)));
    }

    private static Location located(MemoryAudio recording, TimeMap map) {
        double seconds = (double) recording.frames() / RATE;
        return new Location(map, seconds, 0, 0, List.of(1, 1), true, true, 0, seconds, List.of());
    }

    private static ProgrammeReturn returned(Cue... cues) {
        return returned(1, 0, cues);
    }

    @Test
    void theLongestToneOnBothChannelsIsRead() {
        ProgrammeReturn ret =
                returned(
                        1,
                        0.5,
                        tone(ChannelSet.BOTH, 0.2, 2.2, 3150),
                        tone(ChannelSet.BOTH, 2.5, 2.6, 1000),
                        tone(ChannelSet.LEFT, 5.2, 3.5, 3000));
        ToneCourse course = SpeedTone.course(ret).orElseThrow();
        assertEquals(1000, course.toneHz());
        // 0.15 s stay clear at both ends; the differentiator takes 24 values a side.
        double from = 0.5 + 2.5 + 0.15 + 24 / course.rateHz();
        assertEquals(from, course.firstSeconds(), 1e-3);
        assertEquals(from + 1, course.seconds(course.rateHz()), 1e-3);
        double seconds = course.percent().length / course.rateHz();
        assertEquals(2.6 - 0.3 - 48 / course.rateHz(), seconds, 2e-3);
        assertEquals(232, course.bandHz(), 1e-9, "220 Hz and 1.2 %");
        for (double percent : course.percent()) {
            assertEquals(0, percent, 5e-4);
        }
        ToneReading reading = SpeedTone.measure(ret);
        assertEquals(1000, reading.speed().toneFrequencyHz());
        assertEquals(0, reading.speed().deviation().value(), 2e-4);
        assertEquals(course.rateHz(), reading.deviation().rateHz());
        assertEquals(seconds, reading.deviation().seconds(), 1e-9);
        assertEquals(232, reading.deviation().bandHz(), 1e-9);
        assertTrue(reading.speed().scrapeBandHz()[1] == 500, "half of the tone");
    }

    /** From 300 Hz to 12 kHz, two seconds or more. */
    @ParameterizedTest
    @CsvSource({
        "300, 2, true",
        "299, 2, false",
        "12000, 2, true",
        "12001, 2, false",
        "3150, 1.999, false"
    })
    void aToneHasToBeLongAndOfAFrequencyThatServes(double hz, double seconds, boolean serves) {
        assertEquals(
                serves,
                SpeedTone.course(returned(tone(ChannelSet.BOTH, 1, seconds, hz))).isPresent());
    }

    @Test
    void withoutAToneEveryFigureSaysSo() {
        ToneReading none = SpeedTone.measure(returned(tone(ChannelSet.LEFT, 1, 3, 3150)));
        assertEquals(
                "The recording holds no steady tone of 2 s or more.",
                none.speed().weightedPeak().reason());
        assertEquals(none.speed().deviation(), none.speed().scrapeFlutter());
        assertNull(none.deviation());
    }

    /** Of the tones on both channels the longest that is not whole is named, no other tone. */
    @Test
    void aToneThatBreaksOffIsTheReason() {
        CueSheet sheet =
                new CueSheet(
                        RATE,
                        9L * RATE,
                        -18,
                        null,
                        List.of(
                                new Cue.Tone(
                                        "speed", ChannelSet.BOTH, 4L * RATE, 3L * RATE, 3150, 0),
                                new Cue.Tone(
                                        "side", ChannelSet.LEFT, 4L * RATE, 5L * RATE, 3150, 0)));
        MemoryAudio recording = Tones.audio(RATE, 6, t -> 0, t -> 0);
        Location location = located(recording, TimeMap.straight(0, 1, 9));
        ProgrammeReturn ret =
                new ProgrammeReturn(new Programme(sheet, recording), recording, location);
        assertEquals(
                "The recording ends at 6.0 s, before the end of the part \"speed\" of the programme.",
                SpeedTone.measure(ret).speed().deviation().reason());
    }

    @Test
    void aToneThatIsNotHeardIsNotRead() {
        ProgrammeReturn silent = returned(0, 0, tone(ChannelSet.BOTH, 1, 3, 3150));
        assertEquals(
                "The speed tone was not heard in the recording.",
                SpeedTone.measure(silent).speed().deviation().reason());
        assertTrue(SpeedTone.course(silent).isEmpty());
    }

    /** 4 % fast: a tone of 3150 Hz is sought and found at 3276 Hz, 1/1.04 as long. */
    @Test
    void aToneIsSoughtWhereTheSpeedPutsIt() {
        Cue.Tone tone = tone(ChannelSet.BOTH, 1, 3, 3150);
        CueSheet sheet = new CueSheet(RATE, 5L * RATE, -18, null, List.of(tone));
        MemoryAudio recording =
                Tones.audio(RATE, 5, Tones.steady(1.04 * 3150), Tones.steady(1.04 * 3150));
        Programme programme = new Programme(sheet, recording);
        Location location = located(recording, TimeMap.straight(0, 1 / 1.04, 5));
        ToneCourse course =
                SpeedTone.course(new ProgrammeReturn(programme, recording, location)).orElseThrow();
        assertEquals(3150, course.toneHz());
        assertEquals(220 + 0.012 * 1.04 * 3150, course.bandHz(), 1e-6);
        assertEquals(4, course.percent()[500], 1e-4);
        assertEquals(
                3 / 1.04 - 0.3 - 48 / course.rateHz(),
                course.percent().length / course.rateHz(),
                2e-3);
    }
}
