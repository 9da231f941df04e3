package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;
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
        DoubleStream.Builder deviation = DoubleStream.builder();
        double density =
                stream.read(x -> DoubleStream.of(x).forEach(deviation::add)).noiseDensity();
        SpeedReader reader = Tones.read(deviation.build().toArray(), stream.rateHz());
        double weighted = reader.rms(FlutterBand.WEIGHTED);
        double least = FrequencyBound.phaseDensity(snr, Tones.RATE);
        double bound = new NoiseFloor(stream, least).rms(FlutterBand.WEIGHTED);
        double distance = Decibels.ofAmplitude(weighted / bound);
        double stated = new NoiseFloor(stream, density).rms(FlutterBand.WEIGHTED);
        double floor = Decibels.ofAmplitude(stated / bound);
        System.out.printf(
                "%5.0f Hz, %.0f dB: weighted noise %.6f %%, %+.2f dB re the Cramér-Rao bound;"
                        + " stated floor %+.2f dB%n",
                toneHz, snr, weighted, distance, floor);
        assertTrue(Math.abs(distance) < 0.5, "distance " + distance);
        assertTrue(Math.abs(floor) < 0.5, "floor " + floor);
    }

    /**
     * White phase noise of 1e-8 rad²/Hz has the density N·(f·100/3150)² as speed in percent, and
     * bands of Butterworth edges the powers ∫f²/(1 + (f/6)⁶)df = 6³·π/6 for wow and ∫f²/(1 +
     * (f/200)²⁰)df = 200³·(π/20)/sin(3π/20) for the whole; flutter has what is between.
     */
    @Test
    @Source("closed forms of the integrals")
    void theFloorIsTheIntegralOverTheBand() {
        ToneStream stream = Tones.stream(Tones.audio(1.5, Tones.steady(TONE)), TONE);
        NoiseFloor floor = new NoiseFloor(stream, 1e-8);
        double unit = 1e-8 * Math.pow(100 / TONE, 2);
        assertEquals(unit * 100 * 100, floor.density(100), 1e-3 * unit * 1e4);
        assertEquals(unit * 4, floor.density(2), 1e-3 * unit * 4);
        double wow = 216 * Math.PI / 6;
        double whole = 8e6 * Math.PI / 20 / Math.sin(3 * Math.PI / 20);
        assertEquals(Math.sqrt(unit * wow), floor.rms(FlutterBand.WOW), 0.002 * 3.37e-5);
        double flutter = Math.sqrt(unit * (whole - wow));
        assertEquals(flutter, floor.rms(FlutterBand.FLUTTER), 0.001 * flutter);
        assertEquals(Math.sqrt(unit * whole), floor.rms(FlutterBand.UNWEIGHTED), 0.001 * flutter);
        assertEquals(Math.sqrt(unit * whole), floor.rms(FlutterBand.AMERICAN), 0.001 * flutter);
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
