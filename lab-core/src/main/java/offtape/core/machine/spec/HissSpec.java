package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

import offtape.core.text.Sentences;

/**
 * Gaussian noise of the tape, added after the replay chain and independent on the two channels.
 *
 * @param levelDb rms from 22.4 Hz to 22.4 kHz (or half the sample rate, if lower), dB re reference,
 *     −160 to 0 dB
 * @param tiltDbPerOctave slope of its density, −6 to 6 dB an octave; default 0 (white)
 * @param leftDb level on the left where it differs, or null
 * @param rightDb level on the right where it differs, or null
 */
public record HissSpec(Double levelDb, double tiltDbPerOctave, Double leftDb, Double rightDb) {

    private static final Sentences SAID = Sentences.near(HissSpec.class);

    /** Checks the limits. */
    public HissSpec {
        given("levelDb", levelDb);
        within("levelDb", levelDb, -160, 0, "dB");
        within("tiltDbPerOctave", tiltDbPerOctave, -6, 6, SAID.say("unit.db-an-octave"));
        withinIfGiven("leftDb", leftDb, -160, 0, "dB");
        withinIfGiven("rightDb", rightDb, -160, 0, "dB");
    }

    /** Level on a channel, 0 left or 1 right, dB re reference. */
    public double channelDb(int index) {
        Double own = index == 0 ? leftDb : rightDb;
        return own == null ? levelDb : own;
    }
}
