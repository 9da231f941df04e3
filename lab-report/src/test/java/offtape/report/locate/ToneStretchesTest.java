package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Speed as read from tones whose returned frequency is known. */
class ToneStretchesTest {

    private static final int RATE = Scene.RATE;

    private static Cue.Tone tone(double from, double seconds, double hz) {
        return new Cue.Tone(
                "t", ChannelSet.BOTH, Math.round(from * RATE), Math.round(seconds * RATE), hz, 0);
    }

    private static CueSheet sheet(Cue... cues) {
        return new CueSheet(RATE, 12L * RATE, -18, null, List.of(cues));
    }

    private static double[] sine(double seconds, double peak, double hz) {
        return new Scene(seconds).with(peak, List.of(new Scene.Part(0, seconds, hz))).sound();
    }

    private static List<ToneStretches.Reading> read(
            CueSheet sheet, double stretch, double reach, double[]... recording) {
        MemoryAudio audio = new MemoryAudio("r", RATE, recording);
        return new ToneStretches(sheet, audio, TimeMap.straight(0, stretch, 12)).read(reach);
    }

    /** A tone of 1 kHz that returns at 1002 Hz came from tape that ran so much faster. */
    @ParameterizedTest
    @CsvSource({"1002, 1", "995, 1", "1200, 0.83", "800, 1.26"})
    void theStretchIsTheNominalOverTheReturnedFrequency(double hz, double expected) {
        List<ToneStretches.Reading> readings =
                read(sheet(tone(2, 1.5, 1000)), expected, 0.012, sine(16, 0.1, hz));
        assertEquals(1, readings.size());
        assertEquals(1000 / hz, readings.get(0).stretch(), 2e-6);
        assertEquals(2.75, readings.get(0).programmeSeconds(), 1e-9);
        assertEquals(1.38, readings.get(0).seconds(), 1e-9);
    }

    /**
     * 5 s less 60 ms at both ends are three pieces of 1.6267 s, the first one's middle at 2.8733.
     */
    @Test
    void longTonesAreReadInPieces() {
        List<ToneStretches.Reading> readings =
                read(sheet(tone(2, 5, 1000)), 1, 0.012, sine(12, 0.1, 1001));
        assertEquals(3, readings.size());
        for (int i = 0; i < 3; i++) {
            assertEquals(4.88 / 3, readings.get(i).seconds(), 1e-9);
            assertEquals(2.06 + (i + 0.5) * 4.88 / 3, readings.get(i).programmeSeconds(), 1e-9);
            assertEquals(1 / 1.001, readings.get(i).stretch(), 2e-6);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.36, 0", "0.37, 1", "0.38, 1"})
    void aQuarterOfASecondClearOfTheEndsIsNeeded(double seconds, int readings) {
        assertEquals(
                readings,
                read(sheet(tone(2, seconds, 1000)), 1, 0.012, sine(12, 0.1, 1000)).size());
    }

    @Test
    void stepsOfLaddersAreReadToo() {
        Cue.Ladder ladder =
                new Cue.Ladder(
                        "l",
                        ChannelSet.BOTH,
                        2L * RATE,
                        3L * RATE,
                        1000,
                        List.of(
                                new Cue.Step(2L * RATE, RATE, -10),
                                new Cue.Step(3L * RATE, RATE, 0)));
        List<ToneStretches.Reading> readings = read(sheet(ladder), 1, 0.012, sine(12, 0.1, 998));
        assertEquals(2, readings.size());
        assertEquals(2.5, readings.get(0).programmeSeconds(), 1e-9);
        assertEquals(3.5, readings.get(1).programmeSeconds(), 1e-9);
        assertEquals(1000 / 998.0, readings.get(1).stretch(), 2e-6);
    }

    /** A tone lies in the slow middle of a map that is faster before and after it. */
    @Test
    void theSpeedExpectedIsThatOfTheTonesMiddle() {
        TimeMap map = new TimeMap(new double[] {0, 2, 4, 12}, new double[] {0, 2, 4.5, 12.5});
        MemoryAudio audio = new MemoryAudio("r", RATE, sine(14, 0.1, 801));
        List<ToneStretches.Reading> readings =
                new ToneStretches(sheet(tone(2, 1.5, 1000)), audio, map).read(0.012);
        assertEquals(1, readings.size());
        assertEquals(1000 / 801.0, readings.get(0).stretch(), 3e-6);
    }

    /** Loud sound before and after a tone says nothing against it. */
    @Test
    void purityIsThatOfTheToneAlone() {
        Scene scene =
                new Scene(12)
                        .with(0.1, List.of(new Scene.Part(2, 3.5, 1003)))
                        .with(
                                1,
                                List.of(new Scene.Part(0, 1.9, 300), new Scene.Part(3.6, 12, 300)));
        List<ToneStretches.Reading> readings =
                read(sheet(tone(2, 1.5, 1000)), 1, 0.012, scene.sound());
        assertEquals(1, readings.size());
        assertEquals(1 / 1.003, readings.get(0).stretch(), 2e-5);
    }

    /** Beyond the reach, and 8 Hz more, a tone is not taken for it. */
    @Test
    void aToneOutOfReachIsNotRead() {
        CueSheet sheet = sheet(tone(2, 1.5, 1000));
        assertEquals(List.of(), read(sheet, 1, 0.012, sine(12, 0.1, 1080)));
        assertEquals(1, read(sheet, 1, 0.1, sine(12, 0.1, 1080)).size());
    }

    /** Half of the power around it must be the tone: noise as strong is half. */
    @ParameterizedTest
    @CsvSource({"0.8, 1", "1.25, 0"})
    void aToneInMoreNoiseThanItselfIsNotRead(double noiseOverTone, int count) {
        double[] x = sine(12, 0.1, 1003);
        Random random = new Random(2);
        double rms = 0.1 / Math.sqrt(2) * noiseOverTone;
        for (int i = 0; i < x.length; i++) {
            x[i] += rms * random.nextGaussian();
        }
        List<ToneStretches.Reading> readings = read(sheet(tone(2, 1.5, 1000)), 1, 0.012, x);
        assertEquals(count, readings.size());
        if (count == 1) {
            assertEquals(1 / 1.003, readings.get(0).stretch(), 2e-4);
        }
    }

    @Test
    void theLouderChannelIsRead() {
        CueSheet sheet = sheet(tone(2, 1.5, 1000));
        double[] loud = sine(12, 0.1, 1002);
        double[] soft = sine(12, 0.05, 1004);
        assertEquals(1 / 1.002, read(sheet, 1, 0.012, soft, loud).get(0).stretch(), 2e-6);
        assertEquals(1 / 1.002, read(sheet, 1, 0.012, loud, soft).get(0).stretch(), 2e-6);
        assertEquals(
                1 / 1.004,
                read(sheet, 1, 0.012, new double[soft.length], soft).get(0).stretch(),
                2e-6);
    }

    @Test
    void onlyWhatTheRecordingHoldsIsRead() {
        CueSheet sheet = sheet(tone(2, 1.5, 1000), tone(5, 1.5, 1000));
        assertEquals(1, read(sheet, 1, 0.012, sine(6, 0.1, 1000)).size());
        // 60 ms from its ends, here the recording's: not a sample may be missing
        CueSheet one = sheet(tone(2, 1.5, 1000));
        assertEquals(1, read(one, 1, 0.012, sine(3.44, 0.1, 1000)).size());
        assertEquals(0, read(one, 1, 0.012, sine(3.44 - 1.0 / RATE, 0.1, 1000)).size());
        MemoryAudio audio = new MemoryAudio("r", RATE, sine(12, 0.1, 1000));
        TimeMap first = TimeMap.straight(-2.06, 1, 12);
        assertEquals(1, new ToneStretches(one, audio, first).read(0.012).size());
        TimeMap before = TimeMap.straight(-2.0601, 1, 12);
        assertEquals(0, new ToneStretches(one, audio, before).read(0.012).size());
        TimeMap early = TimeMap.straight(-3, 1, 12);
        List<ToneStretches.Reading> readings = new ToneStretches(sheet, audio, early).read(0.012);
        assertEquals(1, readings.size());
        assertEquals(5.75, readings.get(0).programmeSeconds(), 1e-9);
        // a tone near half the rate has no room for its band
        assertTrue(read(sheet(tone(2, 1, 7900)), 1, 0.012, sine(12, 0.1, 7900)).isEmpty());
    }
}
