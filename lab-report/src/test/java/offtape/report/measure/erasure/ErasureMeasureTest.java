package offtape.report.measure.erasure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.Erasure;
import org.junit.jupiter.api.Test;

class ErasureMeasureTest {

    private static final int RATE = 44_100;

    /** Ten erased seconds and ten of the tone, with wow of 0.3 % and white hiss. */
    private static double[] replay(double residueDb, double hissRms, long seed) {
        Random random = new Random(seed);
        double[] x = new double[20 * RATE];
        double phase = 0;
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE;
            double wow = 0.003 * Math.sin(2 * Math.PI * 0.7 * t);
            phase += 2 * Math.PI * 1004 * (1 + wow) / RATE;
            double gain = t < 10 ? Math.pow(10, residueDb / 20) : 1;
            x[i] = 0.4 * gain * Math.sin(phase) + hissRms * random.nextGaussian();
        }
        return x;
    }

    /**
     * What is left is known by construction: −52 and −63 dB. The tone's peak of 0.4 is −7.96 dBFS.
     * Hiss of 1e-3 has (30 Hz over 22050 Hz) −28.7 dB less in the band: −88.7 dB, 17 dB under the
     * residue of the right.
     */
    @Test
    void whatIsLeftIsReadThroughWowAndHiss() {
        List<Erasure> read =
                ErasureMeasure.read(
                        new MemoryAudio(
                                "replay.wav", RATE, replay(-52, 1e-3, 1), replay(-63, 1e-3, 2)));
        assertEquals(2, read.size());
        double[] expected = {52, 63};
        for (int c = 0; c < 2; c++) {
            Erasure e = read.get(c);
            assertEquals(-7.96, e.toneDbfs(), 0.05);
            assertEquals(expected[c], e.erasure().value(), 0.1 + e.erasure().uncertainty());
            assertTrue(e.erasure().uncertainty() < 0.6, () -> "± " + e.erasure().uncertainty());
            assertNull(e.atLeastDb());
        }
    }

    /**
     * −100 dB lies 11 dB under the hiss of −88.7 dB re full scale in the band, 20 times its
     * scatter.
     */
    @Test
    void whatLiesUnderTheHissIsALimit() {
        Erasure e =
                ErasureMeasure.read(new MemoryAudio("replay.wav", RATE, replay(-130, 1e-3, 3)))
                        .get(0);
        assertFalse(e.erasure().isKnown());
        assertTrue(e.atLeastDb() > 80 && e.atLeastDb() < 100, () -> "at least " + e.atLeastDb());
    }

    @Test
    void digitalSilenceIsNoErasedTape() {
        double[] x = replay(-400, 0, 4);
        java.util.Arrays.fill(x, 0, 10 * RATE, 0);
        Erasure e = ErasureMeasure.read(new MemoryAudio("replay.wav", RATE, x)).get(0);
        assertTrue(e.erasure().reason().contains("digital silence"));
        assertNull(e.atLeastDb());
    }

    @Test
    void withoutToneOrErasedPartItIsRefused() {
        MemoryAudio silent = new MemoryAudio("a.wav", RATE, new double[10 * RATE]);
        assertThrows(UnusableInputException.class, () -> ErasureMeasure.read(silent));
        MemoryAudio whole = new MemoryAudio("b.wav", RATE, replay(0, 1e-3, 5));
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> ErasureMeasure.read(whole));
        assertTrue(e.getMessage().contains("too little erased tape"));
    }
}
