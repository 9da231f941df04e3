package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The first frame foretold from what is given: a map, an anchor, and sound that is a formula. */
class StartEstimateTest {

    /** What the path's own filters may delay, k = 1. */
    private static final double OWN_S = 2.5e-6;

    /** A marker and a tone beside it; later one that tells the machine's wow. */
    private static WrittenProgramme nearTone() {
        return new WrittenProgramme(
                9,
                WrittenProgramme.marker("start", 0.3),
                WrittenProgramme.tone("near", 0.8, 1, 1000),
                WrittenProgramme.tone("long", 2, 6, 3150));
    }

    /** The long tone lies beyond the reach of the marker, and so tells wow alone. */
    private static WrittenProgramme farTone() {
        return new WrittenProgramme(
                14,
                WrittenProgramme.marker("start", 0.1),
                WrittenProgramme.tone("long", 6.5, 7, 3150));
    }

    private static Placement placement(
            WrittenProgramme written,
            MemoryAudio recording,
            double offset,
            double stretch,
            List<ToneStretches.Reading> readings) {
        double seconds = written.seconds();
        return new Placement(
                written.programme(),
                recording,
                StretchProfile.fit(readings, stretch, seconds),
                TimeMap.straight(offset, stretch, seconds),
                List.of(),
                readings);
    }

    private static Placement placement(
            WrittenProgramme written, MemoryAudio recording, double offset, double stretch) {
        return placement(written, recording, offset, stretch, List.of());
    }

    private static Anchor anchor(double at, double recorded, int... signs) {
        return new Anchor(at, recorded, signs, 0.9);
    }

    /** A marker from 0.3 s on has its middle at 0.55 s. */
    private static Anchor marker(double offset, double stretch, int... signs) {
        return anchor(0.55, offset + stretch * 0.55, signs);
    }

    /**
     * Nothing sounds and no tone is known: the start is the anchor's less the map's course. Its
     * doubt is that of the anchor, 30 µs, of wow as it is assumed over a hundredth of a second, and
     * of the speed before any tone, 2·10⁻⁵, all in programme time, and what filters delay.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 0.5})
    void withoutToneAndMarkerTheAnchorIsBelieved(double stretch) {
        WrittenProgramme bare = new WrittenProgramme(4, WrittenProgramme.marker("start", 3));
        MemoryAudio silence = WrittenProgramme.recording(new double[12_000]);
        StartTime.Estimate start =
                StartTime.of(placement(bare, silence, 0.4, stretch), anchor(0.01, 0.7, 1));
        assertEquals(0.7 - 0.01 * stretch, start.seconds(), 1e-9);
        double wow = WowMemory.assumed().variance(0.01);
        double own = 9e-10 + wow + Math.pow(2e-5 * 0.01, 2);
        double sigma = Math.hypot(stretch * Math.sqrt(own), OWN_S);
        assertEquals(2 * sigma, start.uncertaintySeconds(), 2e-4 * sigma);
    }

    /**
     * Nine readings of speed off by 0 or 1 % scatter by 1 % · √(8/9), and their mean is known to a
     * third of that, of which three times are allowed for. Where the first tone comes after half of
     * the programme, of 8 s here, nothing is known of the speed before but that scatter; what no
     * tone shows may differ by 2·10⁻⁵ more.
     */
    @ParameterizedTest
    @CsvSource({"0.04, 2e-6", "2, 2e-6", "4, 2e-5", "5.6, 2e-5"})
    void scatterOfSpeedWidensTheUncertainty(double firstTone, double more) {
        WrittenProgramme bare = new WrittenProgramme(8, WrittenProgramme.marker("start", 7));
        double[] off = {0.01, 0.01, -0.01, -0.01, 0, 0.01, 0.01, -0.01, -0.01};
        List<ToneStretches.Reading> readings = new ArrayList<>();
        for (int i = 0; i < off.length; i++) {
            readings.add(new ToneStretches.Reading(firstTone + 0.01 * i, 1 + off[i], 1));
        }
        MemoryAudio silence = WrittenProgramme.recording(new double[12_000]);
        StartTime.Estimate start =
                StartTime.of(placement(bare, silence, 0, 1, readings), anchor(0.01, 0.7, 1));
        double slope = 0.01 * Math.sqrt(8 / 9.0) + more;
        double variance = 9e-10 + WowMemory.assumed().variance(0.01) + Math.pow(slope * 0.01, 2);
        double sigma = Math.hypot(Math.sqrt(variance), OWN_S);
        assertEquals(2 * sigma, start.uncertaintySeconds(), 1e-4 * sigma);
    }

    /**
     * The first tone at an eighth of the programme: scatter counts for a quarter there. Thousands
     * of readings would know the mean better.
     */
    @Test
    void aLateFirstToneLeavesTheSpeedUnknown() {
        WrittenProgramme bare = new WrittenProgramme(8, WrittenProgramme.marker("start", 7));
        List<ToneStretches.Reading> readings = new ArrayList<>();
        for (int i = 0; i < 3600; i++) {
            readings.add(new ToneStretches.Reading(1 + 1e-3 * i, i % 2 == 0 ? 1.02 : 0.98, 1));
        }
        MemoryAudio silence = WrittenProgramme.recording(new double[12_000]);
        StartTime.Estimate start =
                StartTime.of(placement(bare, silence, 0, 1, readings), anchor(0.01, 0.7, 1));
        double slope = (0.02 + 2e-5) / 4;
        double variance = 9e-10 + WowMemory.assumed().variance(0.01) + Math.pow(slope * 0.01, 2);
        double sigma = Math.hypot(Math.sqrt(variance), OWN_S);
        assertEquals(2 * sigma, start.uncertaintySeconds(), 2e-4 * sigma);
    }

    /** An even machine: what marker and tone say is where the first frame lies. */
    @ParameterizedTest
    @CsvSource({"0.7, 1", "0.71003, 0.97", "0.3, 1.2"})
    void anEvenMachineIsPlacedToAMicrosecond(double offset, double stretch) {
        WrittenProgramme written = nearTone();
        MemoryAudio recording =
                WrittenProgramme.recording(written.returned(11.5, t -> (t - offset) / stretch));
        // the anchor is 20 µs late, which the marker's phase puts right
        StartTime.Estimate start =
                StartTime.of(
                        placement(written, recording, 0, stretch),
                        marker(offset + 2e-5, stretch, 1));
        assertEquals(offset, start.seconds(), 1e-6);
        assertTrue(start.uncertaintySeconds() >= 2 * OWN_S);
        assertEquals(2 * OWN_S, start.uncertaintySeconds(), 1e-6);
    }

    /** Each channel that is heard counts as much; their azimuth puts them apart. */
    @ParameterizedTest
    @CsvSource({"1, 1, 0", "1, 0, -2e-5", "0, 1, 2e-5", "-1, 1, 0"})
    void theMeanOfTheChannelsThatAreHeardIsTold(int left, int right, double mean) {
        WrittenProgramme written = nearTone();
        double[] early = written.returned(10, t -> t - 0.7 + 2e-5);
        double[] late = written.returned(10, t -> t - 0.7 - 2e-5);
        MemoryAudio recording = WrittenProgramme.recording(early, late);
        StartTime.Estimate start =
                StartTime.of(placement(written, recording, 0, 1), marker(0.7, 1, left, right));
        assertEquals(0.7 + mean, start.seconds(), 1e-6);
    }

    /** If no channel has a sign, the anchor alone is believed. */
    @Test
    void withoutASignTheAnchorIsBelieved() {
        WrittenProgramme written = nearTone();
        MemoryAudio recording = WrittenProgramme.recording(written.returned(10, t -> t - 0.7));
        StartTime.Estimate start =
                StartTime.of(placement(written, recording, 0, 1), marker(0.70002, 1, 0));
        assertEquals(0.70002, start.seconds(), 2e-6);
        assertTrue(start.uncertaintySeconds() > 6e-5);
    }

    /** Lateness of a swing of 40 µs, three times a second. */
    private static DoubleUnaryOperator swinging(double offset, double phase) {
        // the programme's time, to the second order of the swing
        return t -> {
            double p = t - offset;
            return p - swing(p - swing(p, phase), phase);
        };
    }

    private static double swing(double p, double phase) {
        return 4e-5 * Math.sin(6 * Math.PI * p + phase);
    }

    /** Wow is continued back through half a second in which nothing sounds. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1.5, 3, -2})
    void wowIsContinuedToTheStart(double phase) {
        WrittenProgramme written = nearTone();
        MemoryAudio recording =
                WrittenProgramme.recording(written.returned(10, swinging(0.7, phase)));
        StartTime.Estimate start =
                StartTime.of(
                        placement(written, recording, 0, 1),
                        anchor(0.55, 1.25 + swing(0.55, phase), 1));
        double error = start.seconds() - 0.7 - swing(0, phase);
        assertEquals(0, error, start.uncertaintySeconds());
        assertTrue(start.uncertaintySeconds() < 1.2e-5, "" + start.uncertaintySeconds());
    }

    /**
     * The only tone lies beyond reach, the anchor is no marker: the swing between anchor and start
     * cannot be foretold, and is seen to be 2a·sin(π·3·0.1) at most in the tone of seven seconds.
     * Student's t for the six places in it is 2.52 (JCGM 100:2008, table G.2).
     */
    @Test
    void whatALongToneShowsIsInTheUncertainty() {
        WrittenProgramme written = farTone();
        MemoryAudio recording = WrittenProgramme.recording(written.returned(15, swinging(0.7, 0)));
        StartTime.Estimate start =
                StartTime.of(placement(written, recording, 0, 1), anchor(0.1, 0.8, 1));
        double missed = 2 * 4e-5 * Math.sin(0.3 * Math.PI) / Math.sqrt(2) * 2.52 / 2;
        double sigma = Math.hypot(missed, 3e-5);
        assertEquals(0.7, start.seconds(), 2e-5);
        assertEquals(2 * sigma, start.uncertaintySeconds(), 0.03 * 2 * sigma);
    }

    private static List<PhaseReading> readings(int marker, int tones) {
        List<PhaseReading> out = new ArrayList<>();
        IntStream.range(0, tones).forEach(i -> out.add(new PhaseReading(i, 0, 1000, 0, 1 + i % 3)));
        IntStream.range(0, marker).forEach(i -> out.add(new PhaseReading(-i, 0, 1000, 0, 0)));
        return out;
    }

    /** All of the marker and as many of the tones, evenly, as make 350 together, or all. */
    @ParameterizedTest
    @CsvSource({
        "120, 100, 1",
        "100, 249, 1",
        "100, 250, 2",
        "100, 499, 2",
        "100, 500, 3",
        "0, 7000, 21",
        "350, 10, 11",
        "400, 10, 11"
    })
    void readingsAreThinnedEvenly(int marker, int tones, int step) {
        List<PhaseReading> thinned = StartTime.thinned(readings(marker, tones));
        List<PhaseReading> kept = thinned.stream().filter(r -> r.group() > 0).toList();
        assertEquals(marker, thinned.size() - kept.size());
        assertEquals((tones + step - 1) / step, kept.size());
        double[] at = kept.stream().mapToDouble(PhaseReading::programmeSeconds).toArray();
        double[] wanted = new double[at.length];
        Arrays.setAll(wanted, i -> i * step);
        assertEquals(Arrays.toString(wanted), Arrays.toString(at));
    }
}
