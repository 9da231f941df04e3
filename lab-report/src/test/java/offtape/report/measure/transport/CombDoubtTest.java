package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Heads 0.1 s apart, known to 1 ms, in a tone of 20 s. */
class CombDoubtTest {

    private static final Comb COMB = new Comb(0.1, 0.001);

    /** Motion of 0.02 %² a hertz; noise that grows by 0.001 %² a hertz every hertz. */
    private static final CombDoubt DOUBT = new CombDoubt(COMB, 20, 5e-4, f -> 0.02, f -> 0.001 * f);

    /** (2 · 0.1/20)² = 1e-4, and the ridge. */
    @Test
    void aFiniteStretchAndTheRidgeAdd() {
        assertEquals(6e-4, DOUBT.finite(), 1e-15);
    }

    /** At 2.5 Hz (2π · 2.5 · 0.001)² = 2.467e-4, noise over motion 0.0025/0.02 = 0.125. */
    @Test
    void delayAndNoiseAdd() {
        assertEquals(0.1252467, DOUBT.spoilt(2.5), 1e-7);
        assertEquals(0.1258467, DOUBT.all(2.5), 1e-7);
    }

    /** The comb has a power gain of 2 there. */
    @Test
    void sharesThatComeThrough() {
        assertEquals(2 / 2.1258467, DOUBT.gain(2.5), 1e-7);
        assertEquals(2.0006 / 2.1258467, DOUBT.later(2.5), 1e-7);
        assertEquals(0, DOUBT.gain(10), 1e-12);
    }

    /** What the solution lets through and the filter behind it make up the whole. */
    @Test
    void solutionAndFilterMakeUpTheWhole() {
        for (double hz = 0.3; hz < 40; hz += 0.7) {
            double solution = COMB.power(hz) / (COMB.power(hz) + DOUBT.finite());
            assertEquals(DOUBT.gain(hz), solution * DOUBT.later(hz), 1e-12);
        }
    }

    /** A stretch of K = 200 delays does not show 1/K of white motion. */
    @Test
    void ofWhiteMotionOneInSoManyDelaysIsLost() {
        CombDoubt finite = new CombDoubt(new Comb(0.1, 0), 20, 0, f -> 1, f -> 0);
        int steps = 100_000;
        double lost = 0;
        for (int i = 0; i < steps; i++) {
            lost += (1 - finite.gain(10.0 * (i + 0.5) / steps)) / steps;
        }
        assertEquals(1.0 / 200, lost, 1e-5);
    }
}
