package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import offtape.core.programme.ExponentialSweep;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where the harmonics of an exponential sweep fall when it is deconvolved. */
class HarmonicArrivalTest {

    private static final int RATE = 44_100;

    /** How far around the expected place the pulse is looked for, samples. */
    private static final int ROOM = 400;

    /**
     * x + 0.2 x² + 0.2 x³ of a sweep: the second and third harmonic arrive dt2 and dt3 of the table
     * ahead of the linear response, to the nearest sample.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 4})
    @Source({"Farina 2000", "Novak et al. 2015, J. Audio Eng. Soc. 63(10) 786-798"})
    void harmonicsArriveAheadByTheTable(int row) {
        ReferenceTable table = ReferenceTable.load("sweep-sync");
        ExponentialSweep sweep =
                new ExponentialSweep(
                        table.number(row, "startFrequency"),
                        table.number(row, "endFrequency"),
                        table.number(row, "duration"));
        double[] sound = sweep(sweep, 0);
        double[] bent = new double[sound.length];
        for (int i = 0; i < bent.length; i++) {
            bent[i] = sound[i] + 0.2 * sound[i] * sound[i] + 0.2 * Math.pow(sound[i], 3);
        }
        PlainDeconvolution plain = new PlainDeconvolution(sweep, RATE, sound);
        PlainDeconvolution turned = new PlainDeconvolution(sweep, RATE, sweep(sweep, Math.PI / 2));
        double[] pulse = envelope(plain.pulse(bent), turned.pulse(bent));
        assertEquals(0, peak(pulse, plain.zero()) - plain.zero());
        for (int harmonic = 2; harmonic <= 3; harmonic++) {
            double lead = table.number(row, "lead-" + harmonic) * RATE;
            double found = plain.zero() - peak(pulse, (int) Math.round(plain.zero() - lead));
            assertEquals(lead, found, 1, "harmonic " + harmonic);
        }
    }

    private static double[] sweep(ExponentialSweep sweep, double phase) {
        return IntStream.range(0, (int) (sweep.seconds() * RATE))
                .mapToDouble(i -> 0.5 * Math.sin(sweep.phaseRadians((double) i / RATE) + phase))
                .toArray();
    }

    /** A pulse and its quadrature: the second harmonic of a sine is a cosine. */
    private static double[] envelope(double[] pulse, double[] quadrature) {
        return IntStream.range(0, pulse.length)
                .mapToDouble(i -> Math.hypot(pulse[i], quadrature[i]))
                .toArray();
    }

    private static int peak(double[] pulse, int around) {
        int best = around - ROOM;
        for (int i = around - ROOM; i <= around + ROOM; i++) {
            best = Math.abs(pulse[i]) > Math.abs(pulse[best]) ? i : best;
        }
        return best;
    }
}
