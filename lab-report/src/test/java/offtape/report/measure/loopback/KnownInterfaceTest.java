package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import org.junit.jupiter.api.Test;

class KnownInterfaceTest {

    private static final LoopbackUse USE = new LoopbackUse("2026-01-02T03:04:05Z", "abc");

    private static KnownInterface known(InterfaceFigures.Channel... channels) {
        InterfaceFigures figures = new InterfaceFigures(NO, null, NO, NO, NO, List.of(channels));
        return KnownInterface.of(
                new LoopbackSession("loop/results.json", 48_000, "12ef", USE, figures));
    }

    private static InterfaceFigures.Curve curve() {
        double[] none = {0, 0};
        return new InterfaceFigures.Curve(new double[] {20, 20_000}, none, none, none);
    }

    @Test
    void aChannelIsKnownByItsName() {
        InterfaceFigures.Channel left = Loops.channel(NO, curve(), null, List.of());
        KnownInterface known = known(left);
        assertSame(left, known.channel("left").orElseThrow());
        assertFalse(known.channel("right").isPresent());
        assertEquals(0, known.response("left").orElseThrow().levelDb(1000), 0);
        assertFalse(known.response("right").isPresent());
        assertFalse(
                known(Loops.channel(NO, null, null, List.of())).response("left").isPresent(),
                "no sweep told it");
        assertSame(USE, known.use());
        assertEquals(List.of(left), known.figures().channels());
    }

    @Test
    void aLoopbackOfAnotherRateOrProgrammeIsRefused() {
        KnownInterface known = known();
        assertDoesNotThrow(() -> known.requireSame(48_000, "12ef"));
        assertEquals(
                "The loopback loop/results.json was recorded at 48000 frames a second and this"
                        + " return at 44100, at which the interface is another one. Make a"
                        + " loopback at the same rate.",
                refusal(() -> known.requireSame(44_100, "12ef")));
        assertEquals(
                "The loopback loop/results.json was made with another programme than this return."
                        + " Make a loopback with the same programme.",
                refusal(() -> known.requireSame(48_000, "12ee")));
    }

    @Test
    void aLoopbackWithADeadChannelIsRefused() {
        KnownInterface known = known(Loops.withNoise(NO));
        assertDoesNotThrow(() -> known.requireHeard("left"));
        assertEquals(
                "In the loopback loop/results.json the right channel is dead or missing. Check its"
                        + " cable and make the loopback again with all channels that are used.",
                refusal(() -> known.requireHeard("right")));
    }

    private static String refusal(Runnable asked) {
        return assertThrows(UnusableInputException.class, asked::run).getMessage();
    }
}
