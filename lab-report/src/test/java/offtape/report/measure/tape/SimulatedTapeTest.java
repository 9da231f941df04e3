package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.standard.TimeConstants;
import offtape.core.standard.TrackSpacing;
import offtape.reference.Source;
import offtape.report.measure.PlayedMachine;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeTone;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A tape through a simulated machine that moves as a real transport did: set to the wrong time
 * constant, head askew, right channel low, hiss at −58 dB.
 */
class SimulatedTapeTest {

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "seed": 7, "tapeSpeedMmPerS": 190.5,
             "transport": {"speedDeviationPercent": 1.2,
              "motion": {"recorded": "transport-b", "scale": 1}},
             "heads": {"azimuthArcMinutes": 5, "trackSpacingMm": 4, "trackWidthMm": 0.2},
             "electronics": {"equalisation": {"tapeMicroseconds": 70, "replayMicroseconds": 50},
              "right": {"replayGainDb": -0.8}},
             "hiss": {"levelDb": -58}}
            """;

    private static MachineRun run;
    private static TapeReading reading;

    @BeforeAll
    static void aTape() {
        MemoryAudio tape =
                new TapeBench()
                        .gap(0.5)
                        .tone(3150, -10, 6)
                        .gap(0.5)
                        .series(-20, 2, 63, 250, 1000, 4000, 12_500)
                        .play();
        run =
                SimulatedMachine.of(MachineSpec.fromJson(MACHINE))
                        .run(TapeBench.RATE, tape.frames(), -18, TapeBench.RATE);
        double[][] out = PlayedMachine.sound(run, tape);
        reading =
                CalibrationTape.read(
                        new MemoryAudio("return.wav", run.sampleRateHz(), out),
                        new TapeQuestion(
                                null,
                                3150.0,
                                TimeConstants.parse("none,70"),
                                TimeConstants.parse("none,50"),
                                190.5,
                                new TrackSpacing(null, 4, 0)),
                        0,
                        Double.POSITIVE_INFINITY);
    }

    @Test
    void allTonesAreFoundAndNothingElse() {
        assertEquals(
                List.of(3150.0, 63.0, 250.0, 1000.0, 4000.0, 12_500.0),
                reading.tones().stream().map(TapeTone::nominalHz).toList());
    }

    /**
     * By formula: ten times lg of (1 + (2πf·50 µs)²) over (1 + (2πf·70 µs)²), less that at 1 kHz.
     */
    @Test
    @Source("IEC 60094-1:1981 clause 15, the formula of the flux")
    void theWrongConstantShowsAndIsCorrected() {
        double worst = 0;
        for (TapeResponse curve : reading.response()) {
            assertEquals(5, curve.frequencyHz().length);
            for (int i = 0; i < curve.frequencyHz().length; i++) {
                double shelf = shelfDb(curve.frequencyHz()[i]) - shelfDb(1000);
                worst = Math.max(worst, Math.abs(curve.asReadDb()[i] - shelf));
                assertEquals(shelf, curve.asReadDb()[i], 0.04, curve.frequencyHz()[i] + " Hz");
                assertEquals(0, curve.correctedDb()[i], 0.04, curve.frequencyHz()[i] + " Hz");
            }
        }
        System.out.printf("response on a real transport's motion: worst %.4f dB%n", worst);
    }

    private static double shelfDb(double hz) {
        double w = 2e-6 * Math.PI * hz;
        return 10 * Math.log10((1 + w * w * 50 * 50) / (1 + w * w * 70 * 70));
    }

    @Test
    void theHeadIsFoundAskew() {
        double delay = run.truth().channels().interchannelDelay();
        assertEquals(delay, reading.interchannelDelay().value(), 0.1);
        assertEquals(5, reading.azimuth().value(), 0.03);
        assertTrue(
                Math.abs(delay - reading.interchannelDelay().value())
                        <= reading.interchannelDelay().uncertainty());
    }

    @Test
    void balanceAndSpeedAreTheMachines() {
        assertEquals(-0.8, reading.channelDifference().value(), 0.01);
        double speed = run.truth().speed().returnMean();
        double off = Math.abs(speed - reading.speedDeviation().value());
        System.out.printf(
                "speed %.4f %% off, stated ± %.4f %%%n",
                off, reading.speedDeviation().uncertainty());
        assertTrue(off <= reading.speedDeviation().uncertainty());
    }
}
