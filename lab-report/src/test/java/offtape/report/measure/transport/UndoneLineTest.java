package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.report.measure.line.FoundLine;
import org.junit.jupiter.api.Test;

/** Heads 0.1 s apart; the line has a cosine of 0.03 % and a sine of −0.04 %. */
class UndoneLineTest {

    private static UndoneLine at(double hz, double hzUncertainty, double peakUncertainty) {
        double gain = 2 * Math.abs(Math.sin(Math.PI * hz * 0.1));
        return new UndoneLine(
                new FoundLine(hz, hz, hzUncertainty, 0.05 * gain, peakUncertainty, 0, 0),
                0.03,
                -0.04,
                gain);
    }

    @Test
    void peakIsThatOfBothParts() {
        assertEquals(0.05, at(5, 0, 0).peak(), 1e-15);
    }

    /** At a top of the comb its gain of 2 does not change with delay or rate. */
    @Test
    void atATopOnlyTheFitIsUncertain() {
        assertEquals(0.002 / 2, at(5, 0.1, 0.002).peakUncertainty(new Comb(0.1, 0.001)), 1e-12);
    }

    /** The gain's logarithm has the slope π·f·cot(π·f·τ) = 7.854 1/s at 2.5 Hz; k = 2. */
    @Test
    void besideATopTheDelayCounts() {
        double share = 2 * 7.854 * 0.001;
        assertEquals(0.05 * share, at(2.5, 0, 0).peakUncertainty(new Comb(0.1, 0.001)), 1e-6);
    }

    /** And π·τ·cot(π·f·τ) = 0.31416 1/Hz over the rate, whose uncertainty is expanded already. */
    @Test
    void besideATopTheRateCounts() {
        double share = 0.31416 * 0.02;
        assertEquals(0.05 * share, at(2.5, 0.02, 0).peakUncertainty(new Comb(0.1, 0)), 1e-8);
        assertEquals(0.05 * share, at(7.5, 0.02, 0).peakUncertainty(new Comb(0.1, 0)), 1e-8);
    }

    /** Fit 0.0005/√2, delay 0.05 · 0.015708, rate 0.05 · 0.0062832: added as squares. */
    @Test
    void allThreeAddAsSquares() {
        double fit = 0.0005 / Math.sqrt(2);
        double expected =
                Math.sqrt(
                        fit * fit + Math.pow(0.05 * 0.0157080, 2) + Math.pow(0.05 * 0.0062832, 2));
        assertEquals(expected, at(2.5, 0.02, 0.0005).peakUncertainty(new Comb(0.1, 0.001)), 1e-8);
    }
}
