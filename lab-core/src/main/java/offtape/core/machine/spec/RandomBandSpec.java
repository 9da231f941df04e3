package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;

/**
 * Gaussian speed noise of flat density between two rates.
 *
 * @param rmsPercent root mean square of the deviation, 0 to 5 %
 * @param lowHz lower end, 0.05 to 5000 Hz; default 0.5
 * @param highHz upper end, above {@code lowHz}, to 8000 Hz; default 200
 */
public record RandomBandSpec(Double rmsPercent, Double lowHz, Double highHz) {

    private static final Sentences SAID = Sentences.near(RandomBandSpec.class);

    /** Checks the limits and fills in defaults. */
    public RandomBandSpec {
        given("rmsPercent", rmsPercent);
        within("rmsPercent", rmsPercent, 0, 5, "%");
        lowHz = within("lowHz", orElse(lowHz, 0.5), 0.05, 5000, "Hz");
        highHz = within("highHz", orElse(highHz, 200.0), 0.1, 8000, "Hz");
        require(highHz >= 1.1 * lowHz, SAID.say("band-too-narrow"));
    }
}
