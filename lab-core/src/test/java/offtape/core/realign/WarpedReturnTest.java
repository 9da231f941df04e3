package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.TimeMap;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.music.MadeUpMusic;
import offtape.core.music.MadeUpMusic.Kind;
import org.junit.jupiter.api.Test;

/** Wow followed on the simulated machine, whose course of time is known. */
class WarpedReturnTest {

    private static final int RATE = 48_000;

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "hiss": {"levelDb": -58},
             "transport": {"speedDeviationPercent": 0.3,
               "components": [{"name": "capstan", "frequencyHz": 0.6, "peakPercent": 0.2}]},
             "recorder": {"startSeconds": 1.234}}
            """;

    private static MemoryAudio returned(MachineRun run, AudioSource sound) {
        double[][] y = new double[2][(int) run.frames()];
        int[] at = {0};
        run.play(
                sound,
                (block, count) -> {
                    System.arraycopy(block[0], 0, y[0], at[0], count);
                    System.arraycopy(block[1], 0, y[1], at[0], count);
                    at[0] += count;
                });
        return new MemoryAudio("return", RATE, y);
    }

    /** Levels are read in blocks of 5.1 s, all else in shorter ones; what is longer grows. */
    private static final double MOST_AT_ONCE_S = 5.5;

    /** Bar: 5 µs rms of 375 µs, beside the delay of the hiss-free path, which is nothing here. */
    @Test
    void wowOfACapstanIsFollowed() {
        assertEquals(0, leftMicroseconds(MACHINE, 6), 5);
    }

    private static double leftMicroseconds(String machine, double seconds) {
        AudioSource drums = MadeUpMusic.of(Kind.DRUMS, RATE, seconds, 3);
        MachineRun run =
                SimulatedMachine.of(MachineSpec.fromJson(machine))
                        .run(RATE, drums.frames(), -18, RATE);
        int most = (int) (MOST_AT_ONCE_S * RATE);
        AudioSource original = new InStretches(drums, most);
        AudioSource returned = new InStretches(returned(run, drums), most);
        FoundTrack found = TrackMatch.follow(original, returned, Optional.empty(), true);
        assertTrue(found.warp().isSignificant());
        TimeMap truth = run.timeMap();
        double sum = 0;
        int count = 0;
        for (int i = RATE / 10; i < drums.frames() - RATE / 10; i += 441) {
            double off =
                    found.warp().course().at(i) / RATE - truth.returnSeconds((double) i / RATE);
            sum += off * off;
            count++;
        }
        return 1e6 * Math.sqrt(sum / count);
    }
}
