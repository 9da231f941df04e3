package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
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

    private static double[] hertz(Separation parts) {
        return parts.lines().stream().mapToDouble(l -> l.line().hz()).toArray();
    }

    /**
     * 9.5 Hz in all replays and another line in each: every line once, by the strongest it is in
     * any replay (11 s: bins of 0.09 Hz, so 30.2 Hz and 30.6 Hz are two).
     */
    @Test
    void everyLineIsToldOnceAndTheStrongestFirst() {
        double[][] x = new double[2][];
        for (int p = 0; p < x.length; p++) {
            x[p] = Wavering.random(new Random(p), 1e-4, COUNT);
            Wavering.addLine(x[p], 9.5, 0.05 - 0.02 * p, p);
        }
        Wavering.addLine(x[0], 30.2, 0.02, 0);
        Wavering.addLine(x[1], 30.6, 0.04, 0);
        Wavering.addLine(x[1], 17, 0.07, 0);
        Separation parts = new Separation(x, Wavering.RATE_HZ);
        assertArrayEquals(
                new double[] {17, 9.5, 30.6, 30.2},
                Arrays.copyOf(hertz(parts), 4),
                0.01,
                Arrays.toString(hertz(parts)));
        for (double hz : Arrays.copyOfRange(hertz(parts), 4, parts.lines().size())) {
            for (double told : new double[] {17, 9.5, 30.6, 30.2}) {
                assertTrue(Math.abs(hz - told) > 0.13, hz + " Hz is told already");
            }
        }
    }

    /** Of thirteen lines the weakest stays with the rest; twelve are told. */
    @Test
    void twelveLinesAreTold() {
        double[][] x = new double[2][];
        for (int p = 0; p < x.length; p++) {
            x[p] = Wavering.random(new Random(p), 1e-4, 1500);
        }
        for (int l = 0; l < 13; l++) {
            Wavering.addLine(x[0], 7 + 5 * l, 0.06 - 0.002 * l, l);
            Wavering.addLine(x[1], 7 + 5 * l, 0.06 - 0.002 * l, 2 * l);
        }
        double[] told = hertz(new Separation(x, Wavering.RATE_HZ));
        double[] wanted = new double[12];
        Arrays.setAll(wanted, l -> 7 + 5 * l);
        assertArrayEquals(wanted, told, 0.03);
    }
}
