package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import offtape.core.standard.FlutterBand;
import org.junit.jupiter.api.Test;

/** Lines and flutter together, in what was written and in what each replay adds. */
class SeparationTest {

    private static final int COUNT = 5500;
    private static final double CAPSTAN_HZ = 9.549;

    /**
     * A capstan of 0.06 % and 0.04 % peak with flutter of 0.03 %, replays at phases that spread:
     * each figure within what it states of the truth, and every part told.
     */
    @Test
    void aCapstanIsPartedInFourReplays() {
        Random random = new Random(12);
        double[] written = Wavering.random(random, 0.03, COUNT);
        Wavering.addLine(written, CAPSTAN_HZ, 0.06, 1);
        double[][] read = new double[4][];
        for (int p = 0; p < read.length; p++) {
            read[p] = Wavering.random(random, 0.03, COUNT);
            Wavering.addLine(read[p], CAPSTAN_HZ, 0.04, 0.4 + 1.7 * p);
        }
        Separation parts = new Separation(Wavering.heard(written, read), Wavering.RATE_HZ);
        RingPosterior ring = parts.lines().get(0).ring();
        assertEquals(CAPSTAN_HZ, parts.lines().get(0).line().hz(), 0.02);
        assertEquals(0.06, ring.still().middle(), ring.still().reach());
        assertEquals(0.04, ring.turning().middle(), ring.turning().reach());
        for (FlutterBand band : new FlutterBand[] {FlutterBand.WEIGHTED, FlutterBand.FLUTTER}) {
            Share w = parts.written(band);
            Share r = parts.read(band);
            assertEquals(Wavering.power(written, band), w.power(), w.uncertainty());
            assertEquals(Wavering.power(read, band), r.power(), r.uncertainty());
            assertTrue(w.isToldBeside(r) && r.isToldBeside(w), band + ": " + w + " " + r);
        }
    }

    /** Two replays with the same capstan tell flutter, and say that they do not tell the rest. */
    @Test
    void twoReplaysDoNotPartALine() {
        Random random = new Random(5);
        double[] written = Wavering.random(random, 0.01, COUNT);
        Wavering.addLine(written, CAPSTAN_HZ, 0.06, 1);
        double[][] read = new double[2][];
        for (int p = 0; p < read.length; p++) {
            read[p] = Wavering.random(random, 0.01, COUNT);
            Wavering.addLine(read[p], CAPSTAN_HZ, 0.06, 2.1 * p);
        }
        Separation parts = new Separation(Wavering.heard(written, read), Wavering.RATE_HZ);
        Share w = parts.written(FlutterBand.FLUTTER);
        Share r = parts.read(FlutterBand.FLUTTER);
        assertTrue(!w.isToldBeside(r), w + " " + r);
        assertEquals(Wavering.power(written, FlutterBand.FLUTTER), w.power(), w.uncertainty());
    }

    /** A power of 0.0100 ± 0.0075 %²: 0.1 % rms, up to 0.13229, down to 0.05: by 0.05 at most. */
    @Test
    void theUncertaintyOfAnRmsReachesToTheFartherEnd() {
        assertEquals(0.1, new Share(0.01, 0.0075).rms().value(), 1e-12);
        assertEquals(0.05, new Share(0.01, 0.0075).rms().uncertainty(), 1e-12);
        assertEquals(0, new Share(-0.001, 0.0035).rms().value(), 0);
        assertEquals(0.05, new Share(-0.001, 0.0035).rms().uncertainty(), 1e-12);
    }
}
