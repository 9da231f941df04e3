package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.core.unit.Quantity;
import offtape.reference.Source;
import offtape.reference.TransportMotion;
import offtape.report.measure.speed.HeardDeviation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("study")
class CombDelayTest {

    private static final int TRIALS = 40;

    /**
     * Where it is told it must be right: within twice the uncertainty nine times of ten or more.
     */
    @Test
    void theReturnTellsTheDelay() {
        int told = 0;
        int held = 0;
        for (int number = 0; number < TRIALS; number++) {
            DrawnTransport drawn = DrawnTransport.of(1000 + number);
            Optional<CombDelay> found = CombDelay.find(drawn.heard(), 1.5);
            if (found.isPresent()) {
                told++;
                double off = Math.abs(found.get().seconds() - drawn.delaySeconds());
                held += off <= 2 * found.get().sigmaSeconds() ? 1 : 0;
                assertTrue(off < 0.03 * drawn.delaySeconds(), drawn.delaySeconds() + " s");
            }
        }
        System.out.println("Delay told " + told + " of " + TRIALS + ", held " + held);
        assertTrue(told > 0.6 * TRIALS, told + " told");
        assertTrue(held > 0.88 * told, held + " of " + told);
    }

    /** Motion that only one head hears has no comb, whatever lines and edges its spectrum has. */
    @Test
    void withoutASecondHeadNothingIsTold() {
        int told = 0;
        for (int seed = 0; seed < 40; seed++) {
            int edge = 30 + 3 * seed;
            double[] x =
                    new DrawnMotion(20, 500, 0, seed)
                            .line(9.55, 0.05)
                            .line(1.3 + 0.1 * seed, 0.03)
                            .noise(f -> f < 0.5 || f > edge ? 0 : 1e-4 / (1 + f / 5))
                            .own();
            HeardDeviation heard = new HeardDeviation(x, 500, 225, f -> 1e-12 * f * f, List.of());
            told += CombDelay.find(heard, 1.5).isPresent() ? 1 : 0;
        }
        assertEquals(0, told);
    }

    /**
     * The recorded motions of a real transport with three heads hold the comb of its heads. The
     * distance is not published with them; three recordings of one machine must agree, and quarter
     * inch machines have their heads 25 to 60 mm apart (common practice, no source). Five seconds
     * are too short for {@link CombDelay} to vouch for it, so the likeliest delay is looked at.
     */
    @Test
    @Source("O. Mikkonen et al., recordings of a three-head machine at 19.05 cm/s, DAFx 2023")
    void threeRecordingsOfARealMachineAgree() {
        double[] likeliest =
                TransportMotion.NAMES.stream()
                        .mapToDouble(n -> likeliest(new CombSpectrum(recorded(n))))
                        .toArray();
        System.out.println("Likeliest delay, recorded motions: " + Arrays.toString(likeliest));
        for (double seconds : likeliest) {
            assertEquals(likeliest[0], seconds, 0.015 * likeliest[0]);
            assertTrue(190.5 * seconds > 25 && 190.5 * seconds < 60, seconds + " s");
        }
    }

    private static double likeliest(CombSpectrum spectrum) {
        double best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int tenths = 100; tenths < 5000; tenths += 5) {
            double likelihood = spectrum.logLikelihood(1e-4 * tenths, 40);
            best = likelihood > most ? 1e-4 * tenths : best;
            most = Math.max(most, likelihood);
        }
        return best;
    }

    private static HeardDeviation recorded(String name) {
        TransportMotion motion = TransportMotion.load(name);
        double[] t = motion.seconds();
        double[] late = motion.lateMicroseconds();
        double[] x = new double[late.length - 2];
        for (int i = 0; i < x.length; i++) {
            x[i] = -1e-4 * (late[i + 2] - late[i]) / (t[i + 2] - t[i]);
        }
        double mean = Arrays.stream(x).average().orElseThrow();
        Arrays.setAll(x, i -> x[i] - mean);
        return new HeardDeviation(x, 1 / (t[1] - t[0]), 40, f -> 1e-9 * f * f, List.of());
    }

    /** What was given is made sharper where it fits, and contradicted where it does not. */
    @Test
    void aWrongDelayIsContradicted() {
        double delay = 0.1575;
        HeardDeviation heard =
                new DrawnMotion(20, 500, delay, 3)
                        .noise(f -> f < 0.5 || f > 90 ? 0 : 1e-4)
                        .heard(delay, MadeReturn.HISS);
        HeadDelays delays = new HeadDelays(heard, 0.4);
        HeadDelay fits = delays.decide(Quantity.known(157.6, "ms", 0.4), null).orElseThrow();
        assertEquals(delay, fits.seconds(), 2.5 * fits.sigmaSeconds());
        assertTrue(fits.sigmaSeconds() < 5e-5 && fits.note() == null);
        HeadDelay wrong = delays.decide(Quantity.known(171.2, "ms", 0.4), null).orElseThrow();
        assertEquals("head-delay-contradicted", wrong.note().code());
        assertEquals(delay, wrong.seconds(), 2.5 * wrong.sigmaSeconds());
        HeadDelay alone = delays.decide(Quantity.unknown("Not measured."), null).orElseThrow();
        assertEquals(delay, alone.seconds(), 2.5 * alone.sigmaSeconds());
    }
}
