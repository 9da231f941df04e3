package offtape.report.fault.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import offtape.report.fault.symptom.Reading;
import org.junit.jupiter.api.Test;

/** Likelihoods against their formula, worked out by hand on one or two symptoms. */
class SymptomLikelihoodTest {

    /**
     * −½·17·ln(1 + z²/16) − ½·ln s² (Student's t with sixteen degrees of freedom, its constant left
     * out).
     */
    private static double tails(double d, double variance) {
        return -8.5 * Math.log(1 + d * d / (16 * variance)) - Math.log(variance) / 2;
    }

    /** Grain of 10 kHz is 0.4 dB; with a spread of 0.3 dB that makes one of 0.5 dB. */
    @Test
    void oneSymptomThatAdds() {
        SymptomLikelihood one =
                new SymptomLikelihood(
                        sound(List.of("response-10000"), new double[] {-1}, 0.09),
                        Map.of("response-10000", new Reading(-3, 0)));
        assertEquals(tails(-4, 1), one.log(), 1e-12);
        Effect effect = one.effect(course("response-10000", -2, 0), false, 0.5);
        // the course is trusted within 12 % of its change of four spreads
        assertEquals(tails(0, 1 + 0.0144 * 16), one.log(effect), 1e-12);
        assertEquals(tails(4, 1 + 2 * 0.0144 * 16), one.log(effect, effect), 1e-12);
    }

    /** What differs between the channels changes its sign with them. */
    @Test
    void aMirrorImageTurnsDifferences() {
        String key = "response-10000-difference";
        SymptomLikelihood one =
                new SymptomLikelihood(
                        sound(List.of(key), new double[] {0}, 0.09),
                        Map.of(key, new Reading(2, 0)));
        Effect left = one.effect(course(key, -2, 0), true, 0.5);
        assertEquals(tails(0, 1 + 0.0144 * 16), one.log(left), 1e-12);
    }

    /** The largest counts alone: two lines of 0.1 % are no line of 0.2 %. */
    @Test
    void oneSymptomOfWhichTheLargestCounts() {
        SymptomLikelihood one =
                new SymptomLikelihood(
                        sound(List.of("capstan-line"), new double[] {-2}, 0.0036),
                        Map.of("capstan-line", new Reading(-1, 0)));
        // grain 0.08, spread 0.06: together 0.1
        assertEquals(tails(1, 0.01), one.log(), 1e-12);
        Effect line = one.effect(course("capstan-line", -1, 0), false, 0.5);
        assertEquals(tails(0, 0.0064), one.log(line), 1e-12);
        assertEquals(tails(0, 0.0064), one.log(line, line), 1e-12);
    }

    /**
     * Two symptoms with covariance [[0.25, 0.15], [0.15, 0.25]], grains included, off by (0.5,
     * 0.8): the factor is [[0.5, 0], [0.3, 0.4]], so z = (1, (0.8 − 0.3)/0.4) = (1, 1.25).
     */
    @Test
    void symptomsThatGoTogetherAreToldApart() {
        Sound sound =
                new Sound(
                        "reel",
                        9,
                        List.of("loud-treble", "loud-treble-difference"),
                        new double[] {0, 0},
                        new double[][] {{0}, {0.15, 0}});
        SymptomLikelihood two =
                new SymptomLikelihood(
                        sound,
                        Map.of(
                                "loud-treble", new Reading(0.5, 0),
                                "loud-treble-difference", new Reading(0.8, 0)));
        assertEquals(tails(1, 1) + tails(1.25, 1), two.log(), 1e-12);
    }

    @Test
    void whatIsNotShownTellsNothing() {
        SymptomLikelihood none =
                new SymptomLikelihood(
                        sound(List.of("response-10000"), new double[] {-1}, 0.09), Map.of());
        assertEquals(0, none.symptoms());
        assertEquals(0, none.log(), 0);
    }

    private static Sound sound(List<String> symptoms, double[] mean, double variance) {
        return new Sound("reel", 9, symptoms, mean, new double[][] {{variance}});
    }

    private static Course course(String symptom, double change, double spread) {
        return new Course(
                "some",
                "form",
                "right",
                false,
                List.of(new Course.Move(symptom, new double[] {change, 0, 0}, spread)));
    }
}
