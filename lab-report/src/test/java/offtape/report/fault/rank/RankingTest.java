package offtape.report.fault.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import offtape.report.fault.symptom.Reading;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;
import org.junit.jupiter.api.Test;

/** Faults named in a world of our own, in which each fault moves symptoms by known amounts. */
class RankingTest {

    private static final List<String> CODES =
            List.of("dirty-head", "weak-channel", "hiss", "record-azimuth");

    /** Sound machines show 0 of everything, spread by a tenth beside the grain. */
    private static final Signatures WORLD =
            new Signatures(
                    Signatures.FORMAT,
                    Signatures.VERSION,
                    "by hand",
                    List.of(sound("reel"), sound("cassette")),
                    List.of(
                            course("dirty-head", "both", false, "response-10000", -3, -9),
                            course("weak-channel", "right", false, "balance", -4, -10),
                            course("hiss", "both", false, "hiss", 8, 12),
                            course("azimuth", "both", true, "delay-difference", 1, 1)));

    private static Sound sound(String tape) {
        List<String> keys = Symptoms.all().stream().map(Symptom::key).toList();
        double[][] covariance = new double[keys.size()][];
        for (int i = 0; i < covariance.length; i++) {
            covariance[i] = new double[i + 1];
            covariance[i][i] = 0.01;
        }
        return new Sound(tape, 100, keys, new double[keys.size()], covariance);
    }

    /** From {@code slight} on, by {@code more} at the grossest. */
    private static Course course(
            String code,
            String side,
            boolean mirrored,
            String symptom,
            double slight,
            double more) {
        return new Course(
                code,
                "form",
                side,
                mirrored,
                List.of(new Course.Move(symptom, new double[] {slight, more, 0}, 0.1)));
    }

    private static Diagnosis of(Map<String, Double> shown) {
        Map<String, Reading> readings = new LinkedHashMap<>();
        Symptoms.all().forEach(s -> readings.put(s.key(), new Reading(0, 0)));
        shown.forEach((k, v) -> readings.put(k, new Reading(v, 0)));
        return Diagnosis.of(WORLD, 190.5, CODES, readings).orElseThrow();
    }

    /**
     * Nothing is moved. A fault that is not there costs its prior of 0.05 and more, so that none is
     * there is more likely than the product of 0.95 for each of four, 0.81.
     */
    @Test
    void aSoundMachineIsCalledSound() {
        Diagnosis none = of(Map.of());
        assertTrue(none.sound() > 0.95, () -> none.sound() + " " + none.faults());
        assertEquals(1, none.sound() + none.strange() + some(none), 0.02);
    }

    /** The likelihoods of single faults add to the rest, as two at once are far less likely. */
    private static double some(Diagnosis d) {
        return d.faults().stream().mapToDouble(Ranked::likelihood).sum();
    }

    /** −3 − 9 s = −7.5 dB at s = 0.5. */
    @Test
    void oneFaultIsNamedWithItsSeverity() {
        Ranked first = of(Map.of("response-10000", -7.5)).faults().get(0);
        assertEquals("dirty-head", first.code());
        assertTrue(first.likelihood() > 0.99);
        assertEquals(0.5, first.severity(), 0.06);
    }

    @Test
    void threeFaultsAtOnceAreNamed() {
        Diagnosis d = of(Map.of("response-10000", -12.0, "balance", -9.0, "hiss", 9.0));
        assertEquals(
                List.of("dirty-head", "hiss", "weak-channel"),
                d.faults().stream().limit(3).map(Ranked::code).sorted().toList());
        assertTrue(d.faults().get(2).likelihood() > 0.99);
        assertTrue(d.sound() < 1e-6);
    }

    /** A balance of + 9 dB is the mirror image: the left channel is weak. */
    @Test
    void theWeakChannelIsNamed() {
        assertEquals("right", of(Map.of("balance", -9.0)).faults().get(0).channel());
        assertEquals("left", of(Map.of("balance", 9.0)).faults().get(0).channel());
    }

    /** An azimuth error is no matter of one channel, whichever way it goes. */
    @Test
    void anAzimuthErrorGoesEitherWay() {
        for (double delay : new double[] {1.5, -1.5}) {
            Ranked first = of(Map.of("delay-difference", delay)).faults().get(0);
            assertEquals("record-azimuth", first.code());
            assertEquals(null, first.channel());
        }
    }

    /** Crosstalk of + 20 dB alone, and much else, is what no fault of this world does. */
    @Test
    void aStrangeMachineIsNeitherSoundNorFaulty() {
        Diagnosis d =
                of(
                        Map.of(
                                "crosstalk", 40.0,
                                "k3-slope", 5.0,
                                "noise-darkness", 12.0,
                                "response-63", 14.0,
                                "second-harmonic-difference", 3.0));
        assertTrue(d.strange() > 0.9, () -> "strange " + d.strange());
        assertTrue(d.sound() < 0.01);
    }

    @Test
    void tooFewSymptomsTellNothing() {
        Map<String, Reading> few = Map.of("response-10000", new Reading(-9, 0));
        assertEquals(Optional.empty(), Diagnosis.of(WORLD, 190.5, CODES, few));
    }
}
