package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.Bench.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Channels against each other, damage, recorder, and sameness of the samples. */
class ChannelsTest {

    private static final int RATE_HZ = 48_000;

    /** Δt = 4 mm·tan 5′/190.5 mm/s = 30.54 µs, over 1 + 1 % of speed in return time. */
    @ParameterizedTest
    @CsvSource({"5, 0", "-5, 0", "12, 1"})
    void azimuthDelaysOneChannel(double arcMinutes, double deviation) {
        String members =
                "'heads':{'azimuthArcMinutes':"
                        + arcMinutes
                        + "},'transport':{'speedDeviationPercent':"
                        + deviation
                        + "}";
        double rate = 1 + deviation / 100;
        double[][] out = Bench.play(Bench.machine(members), RATE_HZ, 2, Bench.sine(1000, 0));
        Line left = Bench.line(out[0], RATE_HZ, 0.5, 1.5, 1000 * rate);
        Line right = Bench.line(out[1], RATE_HZ, 0.5, 1.5, 1000 * rate);
        double expected = 4 * Math.tan(Math.toRadians(arcMinutes / 60)) / 190.5 / rate;
        double late = (left.phase() - right.phase()) / (2 * Math.PI * 1000 * rate);
        assertEquals(expected, late, 1e-9);
        double stated =
                Bench.run(Bench.machine(members), RATE_HZ, 2)
                        .truth()
                        .channels()
                        .interchannelDelay();
        assertEquals(1e6 * expected, stated, 1e-6);
    }

    /**
     * 1 arc minute more and less at 2 Hz about 3: the delay of 4 mm·tan(α)/190.5 mm/s at its
     * highest and lowest, an eighth of a second after each half period. Root mean square: 1 arc
     * minute over √2, 6.108 µs / √2 = 4.319 µs.
     */
    @ParameterizedTest
    @CsvSource({"0.625, 4", "0.875, 2"})
    void azimuthWandersAlongTheTape(double atSeconds, double arcMinutes) {
        String members =
                "'heads':{'azimuthArcMinutes':3,'azimuthWander':"
                        + "[{'frequencyHz':2,'peakArcMinutes':1}]}";
        double[][] out = Bench.play(Bench.machine(members), RATE_HZ, 2, Bench.sine(1000, 0));
        double from = atSeconds - 0.001;
        double to = atSeconds + 0.001;
        Line left = Bench.line(out[0], RATE_HZ, from, to, 1000);
        Line right = Bench.line(out[1], RATE_HZ, from, to, 1000);
        double expected = 4 * Math.tan(Math.toRadians(arcMinutes / 60)) / 190.5;
        double late = (left.phase() - right.phase()) / (2 * Math.PI * 1000);
        assertEquals(expected, late, 2e-8);
        double rms =
                Bench.run(Bench.machine(members), RATE_HZ, 2)
                        .truth()
                        .channels()
                        .interchannelDelayWander();
        assertEquals(4.319, rms, 0.001);
    }

    @Test
    void crosstalkLeaksFromTrackToTrack() {
        double[][] out =
                Bench.playLeft(
                        Bench.machine(
                                "'crosstalk':{'leftToRightDb':-48,'rightToLeftDb':-40},"
                                        + "'electronics':{'right':{'replayGainDb':-2}}"),
                        RATE_HZ,
                        2,
                        Bench.sine(1000, 0));
        // The right channel's own reference returns at −2 dB, so the leak at −50 dB is −48 re it.
        assertEquals(-50, Bench.line(out[1], RATE_HZ, 0.5, 1.5, 1000).levelDb(), 1e-5);
        assertEquals(0, Bench.line(out[0], RATE_HZ, 0.5, 1.5, 1000).levelDb(), 1e-5);
    }

    @Test
    void gainsAndPolarityAreTheChannels() {
        String members =
                "'electronics':{'recordGainDb':1,'left':{'replayGainDb':-0.4},"
                        + "'right':{'replayGainDb':0.9,'polarityInverted':true}}";
        double[][] out = Bench.play(Bench.machine(members), RATE_HZ, 2, Bench.sine(1000, 0));
        Line left = Bench.line(out[0], RATE_HZ, 0.5, 1.5, 1000);
        Line right = Bench.line(out[1], RATE_HZ, 0.5, 1.5, 1000);
        assertEquals(0.6, left.levelDb(), 1e-5);
        assertEquals(1.9, right.levelDb(), 1e-5);
        assertEquals(Math.PI, Math.abs(left.phase() - right.phase()), 1e-6);
        MachineTruth truth = Bench.run(Bench.machine(members), RATE_HZ, 2).truth();
        assertEquals(1.3, truth.channels().balance(), 1e-6);
        assertEquals("inverted", truth.timing().polarityRight());
    }

    /** At either end of its length a dropout is 3 dB down, in its middle at full depth. */
    @Test
    void dropoutHasItsLengthAndDepth() {
        double[][] out =
                Bench.play(
                        Bench.machine(
                                "'dropouts':[{'channel':'left','atSeconds':0.5,"
                                        + "'milliseconds':20,'depthDb':9}]"),
                        RATE_HZ,
                        1.2,
                        t -> 0.1);
        assertEquals(-9, 20 * Math.log10(out[0][24_480] / 0.1), 1e-5);
        assertEquals(-3, 20 * Math.log10(out[0][24_000] / 0.1), 1e-5);
        assertEquals(-3, 20 * Math.log10(out[0][24_960] / 0.1), 1e-5);
        assertEquals(0.1, out[0][23_900], 1e-6);
        assertEquals(0.1, out[1][24_480], 1e-6);
    }

    /** Off-tape a place of the tape is heard τ later; the truth says where in the return. */
    @Test
    void truthPlacesDropoutsInTheReturn() {
        MachineTruth truth =
                Bench.run(
                                Bench.machine(
                                        "'mode':'off-tape','recorder':{'startSeconds':1},'dropouts':["
                                                + "{'channel':'both','atSeconds':2,"
                                                + "'milliseconds':30,'depthDb':6}]"),
                                RATE_HZ,
                                5)
                        .truth();
        assertEquals(3 + 30 / 190.5, truth.dropouts().get(0).atSeconds(), 1e-9);
        assertEquals(30, truth.dropouts().get(0).milliseconds(), 1e-6);
    }

    @Test
    void inputClipsWhereItIsSaidTo() {
        double[] left =
                Bench.play(
                        Bench.machine("'recorder':{'clipDbfs':-6}"),
                        RATE_HZ,
                        1,
                        t -> 0.9 * Math.sin(2 * Math.PI * 200 * t))[0];
        double top = IntStream.range(0, left.length).mapToDouble(i -> left[i]).max().orElseThrow();
        assertEquals(Math.pow(10, -6 / 20.0), top, 0);
    }

    /** The lead-in sounds until a second before the programme, which keeps its place. */
    @Test
    void leadInPrecedesTheProgramme() {
        String members = "'recorder':{'startSeconds':3,'leadIn':{'frequencyHz':440,'levelDb':-6}}";
        double[] left = Bench.play(Bench.machine(members), RATE_HZ, 1, Bench.sine(1000, 0))[0];
        assertEquals(-6, Bench.line(left, RATE_HZ, 0.5, 1.5, 440).levelDb(), 1e-4);
        assertEquals(0, Bench.line(left, RATE_HZ, 3.2, 3.8, 1000).levelDb(), 1e-4);
        for (int i = (int) (2.05 * RATE_HZ); i < 2.9 * RATE_HZ; i++) {
            assertEquals(0, left[i], 1e-7);
        }
    }

    /** A recording that starts late is the same recording without its beginning. */
    @Test
    void lateStartCutsTheBeginning() {
        String members =
                "'heads':{'bumps':[{'frequencyHz':60,'gainDb':3}]},"
                        + "'saturation':{'levelAtK3ThreePercentDb':6},'recorder':{";
        double[] whole =
                Bench.play(Bench.machine(members + "}"), RATE_HZ, 3, Bench.sine(500, 3))[0];
        double[] cut =
                Bench.play(
                        Bench.machine(members + "'startSeconds':-1.5,'tailSeconds':-0.5}"),
                        RATE_HZ,
                        3,
                        Bench.sine(500, 3))[0];
        assertEquals(RATE_HZ, cut.length, 1);
        for (int i = 0; i < cut.length; i++) {
            assertEquals(whole[i + RATE_HZ * 3 / 2], cut[i], 1e-9);
        }
    }

    /** The same samples again, from another thread, and for one channel as for two alike. */
    @Test
    void samplesAreAlwaysTheSame() {
        String members =
                "'mode':'off-tape','transport':{'randomFlutter':{'rmsPercent':0.1},"
                        + "'scrapeFlutter':{'rmsPercent':0.02,'lowHz':2000,'highHz':4000}},"
                        + "'saturation':{'levelAtK3ThreePercentDb':6},"
                        + "'hiss':{'levelDb':-58,'tiltDbPerOctave':2},"
                        + "'recorder':{'bits':24,'noiseDbfs':-110}";
        double[] signal = Bench.sampled(RATE_HZ, 2, Bench.sine(1000, 0));
        MemoryAudio stereo = new MemoryAudio("two", RATE_HZ, signal, signal);
        MemoryAudio mono = new MemoryAudio("one", RATE_HZ, signal);
        double[][] first = Bench.play(Bench.run(Bench.machine(members), RATE_HZ, 2), stereo);
        MachineRun run = Bench.run(Bench.machine(members), RATE_HZ, 2);
        CompletableFuture<double[][]> other =
                CompletableFuture.supplyAsync(() -> Bench.play(run, stereo));
        double[][] third = Bench.play(run, mono);
        assertArrayEquals(first[0], other.join()[0]);
        assertArrayEquals(first[1], other.join()[1]);
        assertArrayEquals(first[0], third[0]);
    }

    @Test
    void strangersAreRefused() {
        MachineRun run = Bench.run(Bench.machine(""), RATE_HZ, 2);
        MemoryAudio other = new MemoryAudio("other.wav", 44_100, new double[88_200]);
        UnusableInputException fault =
                assertThrows(
                        UnusableInputException.class, () -> run.play(other, (block, count) -> {}));
        assertTrue(fault.getMessage().startsWith("other.wav"));
        SimulatedMachine machine = SimulatedMachine.of(Bench.machine(""));
        assertThrows(UnusableInputException.class, () -> machine.run(48_000, 0, -20, 48_000));
        assertThrows(UnusableInputException.class, () -> machine.run(4000, 10, -20, 48_000));
    }

    /** A return of another sample rate holds the same tone. */
    @Test
    void returnMayHaveAnotherRate() {
        double[] signal = Bench.sampled(RATE_HZ, 2, Bench.sine(1000, 0));
        MachineRun run =
                SimulatedMachine.of(Bench.machine(""))
                        .run(RATE_HZ, signal.length, Bench.REFERENCE_DBFS, 44_100);
        double[] left = Bench.play(run, new MemoryAudio("test", RATE_HZ, signal))[0];
        assertEquals(0, Bench.line(left, 44_100, 0.5, 1.5, 1000).levelDb(), 1e-5);
        assertEquals(2.5 * 44_100, left.length, 1);
    }
}
