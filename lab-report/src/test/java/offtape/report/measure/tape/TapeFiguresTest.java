package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.TimeConstants;
import offtape.core.standard.TrackSpacing;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeTone;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A tape of three tones that is written down sample by sample: 1 kHz of 0 dB, then 500 Hz of −10
 * dB, which the right channel does not hold, then 1 kHz of −20 dB, between whose channels the delay
 * swings. The right channel is turned over and 1 dB low; it is 1 % fast.
 */
class TapeFiguresTest {

    private static final int RATE = 4000;
    private static final double PEAK = 0.2;
    private static final double DELAY_S = 20e-6;
    private static final double SWING_S = 5e-6;

    private static final TapeQuestion QUESTION =
            new TapeQuestion(
                    new ToneList(
                            ToneList.FORMAT,
                            1,
                            null,
                            "own",
                            "19.05cm/s",
                            "none,70",
                            null,
                            List.of(
                                    Heard.listed(1000, 0.0, ListedTone.Purpose.REFERENCE),
                                    Heard.listed(500, -10.0, ListedTone.Purpose.SPEED),
                                    Heard.listed(1000, -20.0, null))),
                    null,
                    null,
                    TimeConstants.parse("none,50"),
                    null,
                    new TrackSpacing(null, 4, 0));

    private TapeReading reading;

    private static MemoryAudio tape() {
        Random random = new Random(5);
        double[][] x = new double[2][(int) (8.5 * RATE)];
        for (int i = 0; i < x[0].length; i++) {
            double t = (double) i / RATE;
            int n = (int) (t / 2.9);
            boolean sounds = n < 3 && t - 2.9 * n > 0.2;
            double hz = n == 1 ? 505 : 1010;
            double peak = sounds ? PEAK * Math.pow(10, -n / 2.0) : 0;
            double swing = n == 2 ? SWING_S * Math.sin(2 * Math.PI * 1.5 * t) : 0;
            double late = t - DELAY_S - swing;
            x[0][i] = peak * Math.sin(2 * Math.PI * hz * t) + 1e-5 * random.nextGaussian();
            double right = n == 1 ? 0 : -peak * Math.pow(10, -1 / 20.0);
            x[1][i] = right * Math.sin(2 * Math.PI * hz * late) + 1e-5 * random.nextGaussian();
        }
        return new MemoryAudio("tape.wav", RATE, x);
    }

    @BeforeEach
    void read() {
        reading = CalibrationTape.read(tape(), QUESTION, 0, Double.POSITIVE_INFINITY);
    }

    private TapeTone tone(int number) {
        return reading.tones().get(number - 1);
    }

    private static void assertIs(double value, Quantity figure, double within) {
        assertTrue(figure.isKnown(), figure.toString());
        assertEquals(value, figure.value(), within);
    }

    @Test
    void levelsAreToldReFullScaleAndReTheReference() {
        double db = 20 * Math.log10(PEAK);
        assertEquals(3, reading.tones().size());
        assertIs(db, tone(1).levels().get(0).level(), 2e-3);
        assertIs(db - 1, tone(1).levels().get(1).level(), 2e-3);
        assertIs(db - 10, tone(2).levels().get(0).level(), 2e-3);
        assertIs(db - 21, tone(3).levels().get(1).level(), 5e-3);
        // of each channel re its own reference
        assertEquals(Quantity.known(0.0, "dB", 0), tone(1).levels().get(0).relativeLevel());
        assertEquals(Quantity.known(0.0, "dB", 0), tone(1).levels().get(1).relativeLevel());
        assertIs(-10, tone(2).levels().get(0).relativeLevel(), 2e-3);
        assertIs(-20, tone(3).levels().get(1).relativeLevel(), 5e-3);
        Quantity relative = tone(3).levels().get(0).relativeLevel();
        assertEquals(
                Math.hypot(
                        tone(3).levels().get(0).level().uncertainty(),
                        tone(1).levels().get(0).level().uncertainty()),
                relative.uncertainty(),
                1e-12);
        assertEquals("right", tone(2).levels().get(1).channel());
        assertEquals(
                "The tone is not heard on the right channel.",
                tone(2).levels().get(1).relativeLevel().reason());
        assertIs(-1, reading.channelDifference(), 2e-3);
    }

    /** Turned over, the phase is half a turn less 360°·1010 Hz·20 µs = 7.272°. */
    @Test
    void polarityAndDelayAreTold() {
        assertEquals("inverted", reading.polarity());
        // the third tone swings by some turns that are not whole
        assertIs(20, reading.interchannelDelay(), 0.2);
        assertIs(20, tone(1).interchannelDelay(), 0.05);
        assertEquals(180 - 7.272, tone(1).phaseDegrees(), 0.02);
        assertNull(tone(2).phaseDegrees());
        assertEquals(
                "The tone is not heard on both channels.", tone(2).interchannelDelay().reason());
        // 190.5 mm/s · 1.01 · 20 µs / 4 mm = 0.96203 mrad = 3.3072 arc minutes
        assertIs(3.3072, reading.azimuth(), 0.04);
        assertIs(3.3072, tone(1).azimuth(), 0.01);
    }

    /** A sine of 5 µs peak is 3.54 µs rms; where nothing swings a limit is told. */
    @Test
    void wanderIsToldWhereItStandsOut() {
        assertIs(5 / Math.sqrt(2), tone(3).delayWander(), 0.15);
        assertEquals("µs", tone(3).delayWander().unit());
        assertTrue(tone(3).delayWander().uncertainty() < 1);
        String limit = tone(1).delayWander().reason();
        assertTrue(
                limit.matches("No wander stands out of the noise: less than 0\\.[01]\\d µs rms\\."),
                limit);
        assertEquals("The tone is not heard on both channels.", tone(2).delayWander().reason());
    }

    @Test
    void whatWasSaidAndListedIsTold() {
        assertEquals("tape.wav", reading.recording());
        assertEquals("own", reading.tape());
        assertEquals(190.5, reading.tapeSpeedMmPerS());
        assertEquals("none,70", reading.tapeEqualisation());
        assertEquals("none,50", reading.machineEqualisation());
        assertEquals("reference", tone(1).purpose());
        assertEquals("speed", tone(2).purpose());
        assertNull(tone(3).purpose());
        assertEquals(-10, tone(2).recordedDb());
        assertIs(1, reading.speedDeviation(), 1e-3);
        assertEquals("Read from tone 2, the tape's tone of 500 Hz for speed.", reading.speedFrom());
        // under five seconds there is no wow and flutter
        assertNull(reading.speed());
        assertNull(reading.speedTone());
        assertEquals(1, reading.response().get(0).asReadDb()[1] + 1, 5e-3);
    }

    /** Of a recording whose right channel is dead no polarity is told. */
    @Test
    void oneChannelAloneHasNoPolarity() {
        double[][] x = tape().read(0, 3 * RATE);
        x[1] = new double[x[0].length];
        TapeReading dead =
                CalibrationTape.read(
                        new MemoryAudio("dead.wav", RATE, x), TapeQuestion.PLAIN, 0, 3);
        assertNull(dead.polarity());
        assertEquals("No tone was heard on both channels.", dead.interchannelDelay().reason());
        assertTrue(dead.notes().contains("No tone is heard on the right channel."));
    }

    /** Where a stretch is named, only that is read. */
    @ParameterizedTest
    @CsvSource({"0, 3, 1", "2.9, 8.5, 2", "0, 100, 3"})
    void onlyTheStretchThatIsNamedIsRead(double from, double to, int tones) {
        TapeReading some = CalibrationTape.read(tape(), TapeQuestion.PLAIN, from, to);
        assertEquals(tones, some.tones().size());
        assertEquals(from > 1 ? 3.1 : 0.2, some.tones().get(0).fromSeconds(), 0.1);
    }
}
