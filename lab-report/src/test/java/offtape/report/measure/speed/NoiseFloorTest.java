package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.FrequencyBound;
import offtape.core.unit.Decibels;
import offtape.reference.Source;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoiseFloorTest {

    private static final double TONE = 3150;

    /**
     * The bound on phase noise, 2/(SNR·fs), taken for speed and weighted over the band, is the
     * least that a tone in white noise can read. 11 s of 150 Hz know an rms to 0.1 dB, so half a
     * decibel is never the draw.
     */
    @ParameterizedTest
    @CsvSource({
        "3150, 20",
        "3150, 30",
        "3150, 40",
        "3150, 50",
        "3150, 60",
        "3000, 40",
        "1000, 20",
        "1000, 60",
        "10000, 20",
        "10000, 60",
        "315, 40"
    })
    @Source({"Rife and Boorstyn 1974", "Kay 1993"})
    void weightedNoiseLiesAtTheCramerRaoBound(double toneHz, double snr) {
        ToneStream stream = Tones.stream(noisy(toneHz, snr, 11), toneHz);
        Speed speed = SpeedMeasure.of(stream, List.of());
        double least = FrequencyBound.phaseDensity(snr, Tones.RATE);
        double bound = new NoiseFloor(stream, least).rms(FlutterBand.WEIGHTED);
        double distance = Decibels.ofAmplitude(speed.weightedRms().value() / bound);
        double floor = Decibels.ofAmplitude(speed.weightedFloor().value() / bound);
        System.out.printf(
                "%5.0f Hz, %.0f dB: weighted noise %.6f %%, %+.2f dB re the Cramér-Rao bound;"
                        + " stated floor %+.2f dB%n",
                toneHz, snr, speed.weightedRms().value(), distance, floor);
        assertTrue(Math.abs(distance) < 0.5, "distance " + distance);
        assertTrue(Math.abs(floor) < 0.5, "floor " + floor);
    }

    /** What is stated as floor is what noise reads, reading by reading: powers of six draws. */
    @Test
    void everyStatedFloorIsWhatNoiseReads() {
        List<Speed> draws = new ArrayList<>();
        for (int seed = 0; seed < 6; seed++) {
            draws.add(Tones.speed(noisy(TONE, 40, seed), TONE));
        }
        check(
                draws,
                "weighted peak",
                s -> s.weightedPeak().value(),
                s -> s.floors().weightedPeak());
        check(
                draws,
                "weighted two sigma",
                s -> s.weightedTwoSigma().value(),
                s -> s.floors().weightedTwoSigma());
        check(draws, "weighted rms", s -> s.weightedRms().value(), s -> s.floors().weightedRms());
        check(
                draws,
                "unweighted peak",
                s -> s.unweightedPeak().value(),
                s -> s.floors().unweightedPeak());
        check(
                draws,
                "unweighted rms",
                s -> s.unweightedRms().value(),
                s -> s.floors().unweightedRms());
        check(draws, "wow rms", s -> s.wowRms().value(), s -> s.floors().wowRms());
        check(draws, "flutter rms", s -> s.flutterRms().value(), s -> s.floors().flutterRms());
        check(draws, "American rms", s -> s.americanRms().value(), s -> s.floors().americanRms());
    }

    private static void check(
            List<Speed> draws,
            String what,
            Function<Speed, Double> reading,
            Function<Speed, Double> floor) {
        double read = 0;
        double stated = 0;
        for (Speed s : draws) {
            read += Math.pow(reading.apply(s), 2);
            stated += Math.pow(floor.apply(s), 2);
        }
        double error = Decibels.ofPower(stated / read);
        System.out.printf("stated floor of %s: %+.2f dB re what noise reads%n", what, error);
        assertEquals(0, error, 1, what);
    }

    private static MemoryAudio noisy(double toneHz, double snr, long seed) {
        return Tones.audio(
                12, Tones.sum(Tones.steady(toneHz), Tones.noise(Tones.sigma(snr), seed)));
    }
}
