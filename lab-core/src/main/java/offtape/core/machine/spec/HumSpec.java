package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

import java.util.List;

/**
 * Mains hum, added after the replay chain on both channels.
 *
 * @param mainsHz 45 to 65 Hz; default 50
 * @param lines its harmonics, at most 40
 */
public record HumSpec(Double mainsHz, List<Line> lines) {

    /** Checks the limits and fills in defaults. */
    public HumSpec {
        mainsHz = within("mainsHz", orElse(mainsHz, 50.0), 45, 65, "Hz");
        lines = copy("lines", lines, 40);
    }

    /**
     * One line of the hum.
     *
     * @param harmonic multiple of the mains frequency, 1 to 100
     * @param levelDb level re reference, −160 to 0 dB
     */
    public record Line(Integer harmonic, Double levelDb) {

        /** Checks the limits. */
        public Line {
            given("harmonic", harmonic);
            given("levelDb", levelDb);
            within("harmonic", harmonic, 1, 100, "");
            within("levelDb", levelDb, -160, 0, "dB");
        }
    }
}
