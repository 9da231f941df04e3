package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
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

    private static final HeardPart ALL = new HeardPart(0, 100, 50, 1, 1, 1, true, true);

    private static Placement placement(
            WrittenProgramme written, MemoryAudio recording, double offset, double stretch) {
        return placement(written, recording, offset, stretch, ALL, List.of());
    }

    private static Placement placement(
            WrittenProgramme written,
            MemoryAudio recording,
            double offset,
            double stretch,
            HeardPart part,
            List<ToneStretches.Reading> readings) {
        double seconds = written.seconds();
        return new Placement(
                written.programme(),
                recording,
                part,
                StretchProfile.fit(readings, stretch, seconds),
                TimeMap.straight(offset, stretch, seconds),
                List.of(),
                readings);
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
                StartTime.of(placement(bare, silence, 0, 1, ALL, readings), anchor(0.01, 0.7, 1));
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
                StartTime.of(placement(bare, silence, 0, 1, ALL, readings), anchor(0.01, 0.7, 1));
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
    @CsvSource({"1, -1, 1e-5", "1, 0, -2e-5", "0, 1, 4e-5"})
    void theMeanOfTheChannelsThatAreHeardIsTold(int left, int right, double mean) {
        WrittenProgramme written = nearTone();
        double[] early = written.returned(10, t -> t - 0.7 + 2e-5);
        double[] late = written.returned(10, t -> t - 0.7 - 4e-5);
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
    @ValueSource(doubles = {1.5, -2})
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

    /** The beating of a neighbour, as far off as wow goes, over a stretch of a recording. */
    private static double[] disturbed(double[] x, double from, double to, double hz) {
        double[] out = x.clone();
        for (int i = (int) WrittenProgramme.frames(from); i < WrittenProgramme.frames(to); i++) {
            out[i] += 0.02 * Math.sin(2 * Math.PI * hz * i / WrittenProgramme.RATE);
        }
        return out;
    }

    /**
     * A tone of 100 Hz, one on one channel and one of less than a quarter of a second are not
     * looked at, so that what disturbs them, such as hum, does not matter.
     */
    @ParameterizedTest
    @CsvSource({"100, BOTH, 6", "1500, LEFT, 6", "1500, RIGHT, 6", "1500, BOTH, 0.24"})
    void tonesThatTellLittleAreLeftAlone(double hz, ChannelSet channels, double seconds) {
        Cue.Tone poor =
                new Cue.Tone(
                        "poor",
                        channels,
                        WrittenProgramme.frames(1),
                        WrittenProgramme.frames(seconds),
                        hz,
                        0);
        WrittenProgramme written =
                new WrittenProgramme(
                        13,
                        WrittenProgramme.marker("start", 0.3),
                        poor,
                        WrittenProgramme.tone("long", 7.5, 5, 3150));
        double[] x = written.returned(14, t -> t - 0.7);
        MemoryAudio recording =
                WrittenProgramme.recording(disturbed(x, 1.7, 1.7 + seconds, hz + 4));
        StartTime.Estimate start =
                StartTime.of(placement(written, recording, 0, 1), marker(0.7, 1, 1));
        assertEquals(0.7, start.seconds(), 1e-6);
        assertEquals(2 * OWN_S, start.uncertaintySeconds(), 1e-6);
    }

    /**
     * A tone of a second tells an even machine, though with a thirtieth of the trust: of its 0.9 s
     * between margins. A shorter one tells nothing, and wow is assumed.
     */
    @ParameterizedTest
    @CsvSource({"1, true", "0.99, false"})
    void aSecondOfToneTellsTheMachine(double seconds, boolean told) {
        WrittenProgramme written =
                new WrittenProgramme(
                        8,
                        WrittenProgramme.marker("start", 0.1),
                        WrittenProgramme.tone("only", 6.5, seconds, 3150));
        MemoryAudio recording = WrittenProgramme.recording(written.returned(9, t -> t - 0.7));
        StartTime.Estimate start =
                StartTime.of(placement(written, recording, 0, 1), anchor(0.01, 0.71, 1));
        double variance = told ? 9e-10 * 30 / 0.9 : 9e-10 + WowMemory.assumed().variance(0.01);
        double sigma = Math.hypot(Math.sqrt(variance), OWN_S);
        assertEquals(2 * sigma, start.uncertaintySeconds(), 0.02 * sigma);
    }

    /**
     * A tone of six seconds lies wholly in the recording, and what is heard neither begins nor ends
     * in it, or it is not looked at: part of it would pass for a wild motion. Then wow is assumed.
     */
    @ParameterizedTest
    @CsvSource({
        // map's offset, recording, heard from and to, whether all of the long tone counts
        "0, 8, 0, 8, true",
        "0, 7.9, 0, 8, false",
        "-2, 8, 0, 8, true",
        "-2.1, 8, 0, 8, false",
        "0.5, 10, 0, 5, false",
        "0.5, 10, 5, 10, false",
    })
    void onlyToneThatIsWholeCounts(
            double offset, double seconds, double from, double to, boolean counts) {
        WrittenProgramme written =
                new WrittenProgramme(
                        8.5,
                        WrittenProgramme.marker("start", 0.3),
                        WrittenProgramme.tone("long", 2, 6, 3150));
        MemoryAudio recording =
                WrittenProgramme.recording(written.returned(seconds, t -> t - offset));
        HeardPart part = new HeardPart(from, to, 5, 1, 1, 1, true, true);
        // the anchor is no marker and close to the start; without a tone wow is assumed
        StartTime.Estimate start =
                StartTime.of(
                        placement(written, recording, offset, 1, part, List.of()),
                        anchor(0.2, offset + 0.2, 1));
        if (counts) {
            // it tells of an even machine, for 5.9 s between its margins instead of thirty
            double told = 2 * Math.hypot(3e-5 * Math.sqrt(30 / 5.9), OWN_S);
            assertEquals(told, start.uncertaintySeconds(), 0.02 * told);
        } else {
            double assumed = 2 * Math.sqrt(WowMemory.assumed().variance(0.2) + 9e-10);
            assertEquals(assumed, start.uncertaintySeconds(), 0.02 * assumed);
        }
    }

    /** The longest tone is lost, as one of high frequency may be: the next one tells the wow. */
    @Test
    void ifTheLongestToneIsNotHeardTheNextTellsTheMachine() {
        WrittenProgramme written = nearTone();
        double[] x = written.returned(10, t -> t < 2.6 ? t - 0.7 : -1);
        StartTime.Estimate start =
                StartTime.of(
                        placement(written, WrittenProgramme.recording(x), 0, 1), marker(0.7, 1, 1));
        assertEquals(0.7, start.seconds(), 1e-6);
        assertEquals(2 * OWN_S, start.uncertaintySeconds(), 1e-6);
    }

    private static WrittenProgramme lateStart(double nearSeconds) {
        return new WrittenProgramme(
                14,
                WrittenProgramme.marker("start", 1.5),
                WrittenProgramme.tone("near", 2.1, nearSeconds, 1000),
                WrittenProgramme.tone("long", 8, 5, 3150));
    }

    /**
     * The marker follows a second and a half of nothing, and wow turns once a second. The marker
     * alone shows half a turn; with the tone behind it more than two, which are continued.
     */
    @Test
    void tonesBesideTheMarkerTellTheMotion() {
        StartTime.Estimate near = late(lateStart(2));
        // a tone of less than a quarter of a second is not looked at
        StartTime.Estimate alone = late(lateStart(0.2));
        double error = near.seconds() - 0.7 - slow(0);
        assertEquals(0, error, near.uncertaintySeconds());
        assertTrue(near.uncertaintySeconds() < 0.9 * alone.uncertaintySeconds());
    }

    private static StartTime.Estimate late(WrittenProgramme written) {
        MemoryAudio recording =
                WrittenProgramme.recording(written.returned(14, t -> t - 0.7 - slow(t - 0.7)));
        return StartTime.of(
                placement(written, recording, 0, 1), anchor(1.75, 2.45 + slow(1.75), 1));
    }

    private static double slow(double p) {
        return 1e-4 * Math.sin(2 * Math.PI * p + 2);
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
