package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Left and right exchanged between the machine and the recording. */
class SwappedTest {

    private static final int RATE_HZ = 48_000;

    private static final String MACHINE =
            "'heads':{'azimuthArcMinutes':5},'crosstalk':{'leftToRightDb':-48,'rightToLeftDb':-40},"
                    + "'electronics':{'right':{'replayGainDb':-2,'polarityInverted':true,"
                    + "'upperEdgeHz':9000,'secondHarmonicPercent':1}},"
                    + "'bias':{'rightDb':-2},'hiss':{'levelDb':-60,'rightDb':-50},"
                    + "'dropouts':[{'channel':'right','atSeconds':0.3,'milliseconds':20,'depthDb':9},"
                    + "{'channel':'both','atSeconds':0.6,'milliseconds':20,'depthDb':9}]";

    private static final String SWAPPED = MACHINE + ",'swapped':true";

    /** Whatever the machine does comes in on the other side, to the bit. */
    @Test
    void theWholeMachineIsExchanged() {
        double[][] plain = play(MACHINE);
        double[][] swapped = play(SWAPPED);
        assertArrayEquals(plain[0], swapped[1], 0);
        assertArrayEquals(plain[1], swapped[0], 0);
    }

    /** The interface is not: its noise stays on its inputs, and a loopback is as it was. */
    @Test
    void theInterfaceIsNot() {
        String noise = "'recorder':{'noiseDbfs':-60}";
        String loop = "'mode':'loopback'," + noise;
        for (String members : new String[] {noise, loop}) {
            double[][] plain = Bench.play(Bench.machine(members), RATE_HZ, 0.5, t -> 0);
            double[][] swapped =
                    Bench.play(Bench.machine(members + ",'swapped':true"), RATE_HZ, 0.5, t -> 0);
            assertArrayEquals(plain[0], swapped[0], 0);
            assertArrayEquals(plain[1], swapped[1], 0);
        }
        double[][] left =
                Bench.playLeft(
                        Bench.machine("'mode':'loopback','swapped':true"),
                        RATE_HZ,
                        0.5,
                        Bench.sine(1000, 0));
        assertEquals(0, Bench.line(left[0], RATE_HZ, 0.1, 0.4, 1000).levelDb(), 1e-5);
    }

    /**
     * Every figure of the left is that of the machine's right, and what compares them turns over.
     */
    @Test
    void theTruthNamesTheInputs() {
        MachineTruth plain = Bench.run(Bench.machine(MACHINE), RATE_HZ, 1).truth();
        MachineTruth swapped = Bench.run(Bench.machine(SWAPPED), RATE_HZ, 1).truth();
        assertEquals(plain.referenceReturnDbfs().get(1), swapped.referenceReturnDbfs().get(0), 0);
        assertEquals("left", swapped.response().get(0).channel());
        assertEquals(
                plain.response().get(1).upperEdgeHz(), swapped.response().get(0).upperEdgeHz(), 0);
        assertEquals(
                plain.distortion().get(3).steps().get(20).k2Percent(),
                swapped.distortion().get(0).steps().get(20).k2Percent(),
                0);
        assertEquals(plain.noise().get(1).unweighted(), swapped.noise().get(0).unweighted(), 0);
        assertEquals(
                plain.noise().get(1).modulationNoise(),
                swapped.noise().get(0).modulationNoise(),
                0);
        assertEquals("inverted", swapped.timing().polarityLeft());
        assertEquals("normal", swapped.timing().polarityRight());
        assertEquals("left", swapped.dropouts().get(0).channel());
        assertEquals("both", swapped.dropouts().get(1).channel());
        assertComparedTurnsOver(plain, swapped);
    }

    /** 4 mm·tan 5′/190.5 mm/s = 30.54 µs; the left is the one that is late now. */
    private static void assertComparedTurnsOver(MachineTruth plain, MachineTruth swapped) {
        double delay = 1e6 * 4 * Math.tan(Math.toRadians(5 / 60.0)) / 190.5;
        ChannelsTruth own = plain.channels();
        ChannelsTruth turned = swapped.channels();
        assertEquals(-delay, turned.interchannelDelay(), 1e-9);
        assertEquals(-5, turned.azimuth(), 0);
        assertEquals(own.monoLossAt10kHz(), turned.monoLossAt10kHz(), 1e-12);
        assertEquals(-own.balance(), turned.balance(), 1e-12);
        assertEquals(own.crosstalkRightToLeft(), turned.crosstalkLeftToRight(), 1e-12);
        assertEquals(own.crosstalkLeftToRight(), turned.crosstalkRightToLeft(), 1e-12);
        double late = swapped.timing().leftDelayMs() - swapped.timing().rightDelayMs();
        assertEquals(delay / 1000, late, 1e-9);
    }

    private static double[][] play(String members) {
        return Bench.play(Bench.machine(members), RATE_HZ, 1, Bench.sine(1000, 0));
    }
}
