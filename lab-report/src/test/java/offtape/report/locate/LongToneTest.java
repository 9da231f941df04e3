package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A programme that is mostly one long tone: only its ends tell the place, and drift bends the
 * course of time away from them in between. All its sound is a formula, so that the return of any
 * course of speed is exact.
 */
class LongToneTest {

    private static final int RATE = 8000;
    private static final double LENGTH_S = 330;
    private static final double TONE_FROM_S = 24;
    private static final double TONE_S = 305;
    private static final double TONE_HZ = 3150;
    private static final double MARKER_S = 0.5;
    private static final double LAST_MARKER_S = 329.2;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    frames(LENGTH_S),
                    -20,
                    null,
                    List.of(
                            marker("start", 0.5),
                            tone("low", 2, 6, 400),
                            tone("middle", 9, 6, 1000),
                            tone("high", 16, 6, 2500),
                            tone("speed", TONE_FROM_S, TONE_S, TONE_HZ),
                            marker("end", LAST_MARKER_S)));

    private static long frames(double seconds) {
        return Math.round(seconds * RATE);
    }

    private static Cue.Marker marker(String id, double from) {
        return new Cue.Marker(id, ChannelSet.BOTH, frames(from), frames(MARKER_S));
    }

    private static Cue.Tone tone(String id, double from, double seconds, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, frames(from), frames(seconds), hz, 0);
    }

    /** The programme at a time, whole or not. */
    private static double sound(double seconds) {
        for (Cue cue : SHEET.cues()) {
            double t = seconds - SHEET.seconds(cue.startFrame());
            if (t >= 0 && t < SHEET.seconds(cue.frames())) {
                // A marker glides from 500 Hz to 3.3 kHz in its half second.
                double turns =
                        cue instanceof Cue.Tone tone
                                ? tone.frequencyHz() * t
                                : 500 * t + 2800 * t * t / (2 * MARKER_S);
                return 0.1 * Math.sin(2 * Math.PI * turns);
            }
        }
        return 0;
    }

    /** Sound of a length, the programme's time being a function of its own. */
    private static AudioSource sound(double seconds, DoubleUnaryOperator programmeSeconds) {
        double[] x = new double[(int) frames(seconds)];
        Arrays.setAll(x, i -> sound(programmeSeconds.applyAsDouble((double) i / RATE)));
        return new MemoryAudio("long tone", RATE, new double[][] {x});
    }

    /**
     * A machine whose speed at its start and change of speed are given: the programme's time is
     * speed · t + change · t²/2 from one second of the recording on.
     */
    @ParameterizedTest
    @CsvSource({"1.0086, 6.7e-6", "1.025, 8e-6"})
    void isPlacedThoughSpeedDrifts(double speed, double changePerS) {
        DoubleUnaryOperator programmeSeconds =
                t -> speed * (t - 1) + changePerS * (t - 1) * (t - 1) / 2;
        Programme programme = new Programme(SHEET, sound(LENGTH_S, t -> t));
        AudioSource heard = sound(LENGTH_S / 0.97, programmeSeconds);
        Location found = Locator.locate(programme, heard);
        for (double p : new double[] {0.75, LAST_MARKER_S + MARKER_S / 2}) {
            // The positive root of p = speed · t + change · t²/2.
            double root = (-speed + Math.sqrt(speed * speed + 2 * changePerS * p)) / changePerS;
            assertEquals(1 + root, found.map().recordingSeconds(p), 2e-4);
        }
    }
}
