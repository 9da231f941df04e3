package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** How often the stated uncertainties (k = 2) hold the truth, over tones drawn in noise. */
class ToneCoverageTest {

    private static final int DRAWS = 120;

    /**
     * 3 s of 1 kHz, hiss of −26 dB in 4 kHz on either channel, wow that no tone of 3 s averages.
     */
    @Test
    void statedUncertaintiesHold() {
        int level = 0;
        int difference = 0;
        int delay = 0;
        int speed = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            TapeBench bench =
                    new TapeBench()
                            .tone(1000, 0, 3)
                            .at(1.005)
                            .wow(0.1, 0.7 + 0.01 * draw)
                            .right(30, -1)
                            .noise(-26)
                            .rate(8000);
            List<HeardTone> tones = ToneReader.all(bench.play(draw), 0, 3, 1005);
            HeardTone t = tones.get(0);
            double truth = bench.truth().get(0).levelDb();
            level += holds(t.levels().get(0).value() - truth, t.levels().get(0).uncertainty());
            difference += holds(t.difference().value() + 1, t.difference().uncertainty());
            double phase = -2 * Math.PI * 1005 * 30e-6;
            delay += holds(t.phase().radians() - phase, 2 * t.phase().standard());
            speed += holds(t.hz() - 1005, t.hzUncertainty());
        }
        System.out.printf(
                "of %d tones within the stated uncertainty: level %d, difference %d, phase %d,"
                        + " frequency %d%n",
                DRAWS, level, difference, delay, speed);
        for (int held : new int[] {level, difference, delay, speed}) {
            assertTrue(held >= 0.9 * DRAWS, held + " of " + DRAWS);
        }
    }

    private static int holds(double error, double uncertainty) {
        return Math.abs(error) <= uncertainty ? 1 : 0;
    }
}
