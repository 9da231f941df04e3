package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;

/**
 * Noise that tape adds only where something is recorded: the level of whatever is recorded
 * fluctuates at random, independently on the two channels, with a flat density between two rates.
 *
 * @param levelDb root mean square of the fluctuation re the level itself, −100 to −27 dB
 * @param lowHz lower end, 0.5 to 5000 Hz; default 5
 * @param highHz upper end, at least a tenth above {@code lowHz}, to 8000 Hz; default 2000
 */
public record ModulationNoiseSpec(Double levelDb, Double lowHz, Double highHz) {

    private static final Sentences SAID = Sentences.near(ModulationNoiseSpec.class);

    /** Checks the limits and fills in defaults. */
    public ModulationNoiseSpec {
        given("levelDb", levelDb);
        within("levelDb", levelDb, -100, -27, "dB");
        lowHz = within("lowHz", orElse(lowHz, 5.0), 0.5, 5000, "Hz");
        highHz = within("highHz", orElse(highHz, 2000.0), 0.5, 8000, "Hz");
        require(highHz >= 1.1 * lowHz, SAID.say("band-too-narrow"));
    }

    /** Share of the fluctuation's power between two rates in hertz. */
    public double share(double fromHz, double toHz) {
        double common = Math.min(toHz, highHz) - Math.max(fromHz, lowHz);
        return Math.max(0, common) / (highHz - lowHz);
    }
}
