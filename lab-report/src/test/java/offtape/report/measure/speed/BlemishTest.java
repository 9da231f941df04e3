package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.Iec60386;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Dropouts and clicks within the tone, and what must not be taken for them. */
class BlemishTest {

    private static final double TONE = 3150;
    private static final DoubleUnaryOperator WOW = Tones.wavering(TONE, 0, 0.1, 4);

    /** Three dropouts of 30 ms, in which hiss alone is left, at 5, 8 and 11 s. */
    @Test
    void dropoutsAreBridged() {
        Speed s = Tones.speed(Tones.audio(14, holed(WOW, 1)), TONE);
        assertEquals(0.1, s.weightedPeak().value(), 0.03 * 0.1);
        assertEquals(0.1 * Math.sqrt(0.5), s.weightedRms().value(), 0.03 * 0.07);
        assertTrue(
                s.notes().get(0).startsWith("The tone was gone or struck by clicks in 3 places,"));
    }

    /** 15 dB down for 80 ms, far above the hiss, the phase of 10 Hz flutter is read throughout. */
    @Test
    void aShallowDropoutIsReadThrough() {
        DoubleUnaryOperator flutter = Tones.wavering(TONE, 0, 0.2, 10);
        DoubleUnaryOperator hiss = Tones.noise(Tones.sigma(58), 7);
        MemoryAudio audio =
                Tones.audio(
                        12,
                        t ->
                                (1 - 0.82 * dip((t - 7) / 0.08)) * flutter.applyAsDouble(t)
                                        + hiss.applyAsDouble(t));
        Speed s = Tones.speed(audio, TONE);
        assertEquals(List.of(), s.notes());
        assertEquals(0.2, s.unweightedPeak().value(), 0.02 * 0.2);
    }

    /** From 0 to 1 and back, in round slopes of a sixth of the time each. */
    private static double dip(double place) {
        double edge = Math.max(0, Math.min(1, 6 * Math.min(place, 1 - place)));
        return 0.5 - 0.5 * Math.cos(Math.PI * edge);
    }

    @Test
    void theOtherChannelTellsMeanwhile() {
        MemoryAudio audio = Tones.audio(14, holed(WOW, 1), Tones.sum(WOW, Tones.noise(1e-4, 2)));
        Speed s = Tones.speed(audio, TONE);
        assertEquals(0.1, s.weightedPeak().value(), 0.01 * 0.1);
        assertEquals(List.of(), s.notes());
    }

    /** The right channel is cut off from 4.5 s to 6.8 s, to digital silence or to hiss. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, 1e-3})
    void aChannelMayBeAbsentForSeconds(double sigma) {
        DoubleUnaryOperator hiss = Tones.noise(sigma, 5);
        DoubleUnaryOperator cut =
                t -> (t > 4.5 && t < 6.8 ? 0 : WOW.applyAsDouble(t)) + hiss.applyAsDouble(t);
        MemoryAudio audio = Tones.audio(12, Tones.sum(WOW, Tones.noise(3e-5, 6)), cut);
        Speed s = Tones.speed(audio, TONE);
        assertEquals(0.1 * Math.sqrt(0.5), s.weightedRms().value(), 0.005 * 0.07);
        assertEquals(List.of(), s.notes());
    }

    /** One sample nine times as high as the tone, every second from 4 s on. */
    @Test
    void clicksAreBridged() {
        double[] x = Tones.samples(14, Tones.sum(WOW, Tones.noise(1e-4, 3)));
        for (int second = 4; second < 12; second++) {
            x[second * Tones.RATE + 13 * second] += 0.9;
        }
        Speed s = Tones.speed(new MemoryAudio("clicks", Tones.RATE, x), TONE);
        System.out.printf("with clicks: weighted peak %.4f %% of 0.1%n", s.weightedPeak().value());
        assertEquals(0.1, s.weightedPeak().value(), 0.03 * 0.1);
        assertEquals(0.1 * Math.sqrt(0.5), s.unweightedRms().value(), 0.03 * 0.07);
        assertTrue(s.notes().get(0).contains("8 places"), s.notes().toString());
    }

    /**
     * The pulses of the standard's table as speed of a tone: 30 ms of +1 %, once a second, read 62
     * % of what a sine of the same height from top to bottom reads (0.5 % peak at 4 Hz).
     */
    @Test
    @Source("IEC 60386, DIN 45507, time response of the quasi-peak meter")
    void jerksOfTheTapeAreNoClicks() {
        ReferenceTable pulses = ReferenceTable.load("wf-pulse-response");
        double[] x = new double[14 * Tones.RATE];
        double phase = 0;
        for (int i = 0; i < x.length; i++) {
            boolean pulse = i % Tones.RATE < 0.03 * Tones.RATE;
            phase += 2 * Math.PI * TONE * (pulse ? 1.01 : 1) / Tones.RATE;
            x[i] = 0.1 * Math.sin(phase);
        }
        // without the search for lines, which finds every harmonic of the pulses
        ToneStream stream = Tones.stream(new MemoryAudio("pulses", Tones.RATE, x), TONE);
        SpeedReader reader = new SpeedReader(Iec60386.atRate(stream.rateHz()), stream.samples());
        assertEquals(0, stream.read(reader::next).gaps());
        reader.end();
        assertEquals("30", pulses.text(1, "pulse"));
        double percent = 100 * reader.weightedPeak() / 0.5;
        System.out.printf("pulses of 30 ms through tone and demodulator: %.1f %%%n", percent);
        assertEquals(pulses.number(1, "reading"), percent, pulses.number(1, "tolerance"));
    }

    /** Hiss of 30 dB and deep amplitude modulation are neither. */
    @Test
    void noiseAndAmplitudeAreNoBlemishes() {
        DoubleUnaryOperator hiss = Tones.noise(Tones.sigma(30), 4);
        MemoryAudio audio =
                Tones.audio(
                        10,
                        t ->
                                (1 + 0.5 * Math.sin(2 * Math.PI * 30 * t)) * WOW.applyAsDouble(t)
                                        + hiss.applyAsDouble(t));
        assertEquals(List.of(), Tones.speed(audio, TONE).notes());
    }

    private static DoubleUnaryOperator holed(DoubleUnaryOperator tone, long seed) {
        DoubleUnaryOperator hiss = Tones.noise(1e-4, seed);
        return t -> {
            boolean hole = t > 4.9 && t < 12 && (t - 5) % 3 >= 0 && (t - 5) % 3 < 0.03;
            return (hole ? 0 : tone.applyAsDouble(t)) + hiss.applyAsDouble(t);
        };
    }
}
