package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.Bench.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What remains of an earlier recording: 2 s of programme with a tone from 0.2 to 0.7 s. */
class ResidueTest {

    private static final int RATE_HZ = 48_000;

    /**
     * A second later lies the tone again, at −30 dB less the first-order fall 1/√(1 + x²), x =
     * tan(πf/rate)/tan(π·1000/rate) as the bilinear transform has it, and as much later in phase as
     * atan x. A sine of whole periods a second has −π/2 as a cosine.
     */
    @ParameterizedTest
    @CsvSource({"200", "1000", "8000"})
    void theToneComesAgainAtItsPlace(double hertz) {
        double[] left = play("'residue':{'levelDb':-30,'shiftSeconds':1}", hertz, 0)[0];
        double x = Math.tan(Math.PI * hertz / RATE_HZ) / Math.tan(Math.PI * 1000 / RATE_HZ);
        Line again = Bench.line(left, RATE_HZ, 1.3, 1.6, hertz);
        assertEquals(-30 - 10 * Math.log10(1 + x * x), again.levelDb(), 1e-4);
        assertEquals(-Math.PI / 2 - Math.atan(x), again.phase(), 1e-5);
    }

    /** Half a second earlier: from −0.3 s, which is 1.7 s, as the programme is round in itself. */
    @Test
    void itComesInAtTheOtherEnd() {
        double[] left = play("'residue':{'levelDb':-20,'shiftSeconds':-0.5}", 200, 0)[0];
        double x = Math.tan(Math.PI * 200 / RATE_HZ) / Math.tan(Math.PI * 1000 / RATE_HZ);
        double level = -20 - 10 * Math.log10(1 + x * x);
        assertEquals(level, Bench.line(left, RATE_HZ, 1.75, 1.98, 200).levelDb(), 1e-3);
        assertTrue(Bench.line(left, RATE_HZ, 1.2, 1.5, 200).levelDb() < -120, "silent between");
    }

    /**
     * At +12 dB a tape of 3 % at 3 dB is far in its bend, but what remains is 12 dB louder to the
     * last, has no harmonic, and lies at the same place, though the curve's filters take time. The
     * gain of the record amplifier was the same then.
     */
    @Test
    void itDoesNotLoadTheTape() {
        String members =
                "'residue':{'levelDb':-30,'shiftSeconds':1},'electronics':{'recordGainDb':2},"
                        + "'saturation':{'levelAtK3ThreePercentDb':3,'emphasisMicroseconds':50}";
        double[] left = play(members, 200, 12)[0];
        double x = Math.tan(Math.PI * 200 / RATE_HZ) / Math.tan(Math.PI * 1000 / RATE_HZ);
        Line again = Bench.line(left, RATE_HZ, 1.3, 1.6, 200);
        assertEquals(-16 - 10 * Math.log10(1 + x * x), again.levelDb(), 1e-3);
        assertEquals(-Math.PI / 2 - Math.atan(x), again.phase(), 1e-5);
        assertTrue(Bench.line(left, RATE_HZ, 1.3, 1.6, 600).levelDb() < -110);
        assertTrue(Bench.line(left, RATE_HZ, 0.3, 0.6, 600).levelDb() > -20);
    }

    /** Replay losses and speed are those of everything on the tape; it stays on its own track. */
    @Test
    void itIsReadAsTheRest() {
        String members =
                "'residue':{'levelDb':-20,'shiftSeconds':1},'heads':{'spacingLossMicrometres':10},"
                        + "'transport':{'speedDeviationPercent':2}";
        double[][] out = Bench.playLeft(Bench.machine(members), RATE_HZ, 2, tone(4000, 0));
        double first = Bench.line(out[0], RATE_HZ, 0.3, 0.6, 4080).levelDb();
        double again = Bench.line(out[0], RATE_HZ, 1.3, 1.6, 4080).levelDb();
        double x = Math.tan(Math.PI * 4000 / RATE_HZ) / Math.tan(Math.PI * 1000 / RATE_HZ);
        assertEquals(-20 - 10 * Math.log10(1 + x * x), again - first, 1e-3);
        for (double v : out[1]) {
            assertEquals(0, v, 0);
        }
    }

    @Test
    void aLoopbackHasNoTape() {
        double[] left =
                play("'mode':'loopback','residue':{'levelDb':-10,'shiftSeconds':1}", 200, 0)[0];
        assertTrue(Bench.line(left, RATE_HZ, 1.3, 1.6, 200).levelDb() < -120);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "'levelDb':-5", "'levelDb':-81", "'levelDb':-30,'shiftSeconds':601"})
    void whatCannotBeIsRefused(String members) {
        assertThrows(
                UnusableInputException.class, () -> Bench.machine("'residue':{" + members + "}"));
    }

    private static double[][] play(String members, double hertz, double levelDb) {
        return Bench.play(Bench.machine(members), RATE_HZ, 2, tone(hertz, levelDb));
    }

    /** A tone with edges of a raised cosine, 20 ms long. */
    private static DoubleUnaryOperator tone(double hertz, double levelDb) {
        DoubleUnaryOperator sine = Bench.sine(hertz, levelDb);
        return t -> {
            double inside = Math.max(0, Math.min(1, Math.min(t - 0.2, 0.7 - t) / 0.02));
            return (1 - Math.cos(Math.PI * inside)) / 2 * sine.applyAsDouble(t);
        };
    }
}
