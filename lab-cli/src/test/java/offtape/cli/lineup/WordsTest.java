package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.sound.LevelCeiling;
import offtape.core.programme.ChannelSet;
import offtape.core.text.Language;
import org.junit.jupiter.api.Test;

/** What to turn, as an engineer would say it from the same figures. */
class WordsTest {

    private static final double REFERENCE = -18;
    private static final Wording ENGLISH = Wording.in(Language.ENGLISH);

    private static ToneReading tone(double levelDb, Double k3) {
        return new ToneReading(REFERENCE + levelDb, 1, k3, null);
    }

    private static ToneReading noise() {
        return new ToneReading(-90, 0.1, null, null);
    }

    private static Readings readings(View view, ChannelSet channels, ToneReading... tones) {
        Desk desk =
                Desk.begin(
                        new Desk.Limits(REFERENCE, LevelCeiling.FULL_SCALE, REFERENCE, false),
                        view,
                        1000,
                        0,
                        channels);
        List<Peak> peaks = new ArrayList<>();
        for (ToneReading t : tones) {
            peaks.add(new Peak(t.levelDbfs(), false));
        }
        return new Readings(
                Stage.READING,
                true,
                desk,
                List.of(tones),
                null,
                null,
                AzimuthTrack.begin(),
                List.of(),
                List.of(),
                Delay.none(),
                peaks,
                0);
    }

    private static List<String> both(double left, double right) {
        return new LevelWords(ENGLISH)
                .of(readings(View.GAINS, ChannelSet.BOTH, tone(left, 0.5), tone(right, 0.5)));
    }

    @Test
    void channelsThatMatchNeedNothing() {
        assertEquals(
                List.of("Channels match, at the level at which they are sent. Nothing to turn."),
                both(0.1, -0.15));
    }

    @Test
    void theChannelThatIsOffIsNamed() {
        assertEquals(
                List.of("Right comes back 1.3 dB low: raise the right record gain."),
                both(0, -1.3));
        assertEquals(
                List.of("Left comes back 0.8 dB high: lower the left record gain."), both(0.8, 0));
        assertEquals(
                List.of("Right comes back 0.5 dB low against left: raise the right record gain."),
                both(0.25, -0.25));
        assertEquals(
                "Right comes back 1.3 dB low against left: raise the right record gain.",
                both(-2, -3.3).get(0));
        assertTrue(both(-2, -3.3).get(1).startsWith("Both come back at least 2.0 dB low: raise"));
    }

    @Test
    void bothOffAlikeAreTurnedTogether() {
        assertTrue(both(-3, -3).get(0).startsWith("Channels match. Both come back 3.0 dB low"));
        assertTrue(both(2, 2.1).get(0).contains("lower both record gains"));
    }

    @Test
    void aReturnThatLeavesNoRoomIsTooHot() {
        assertEquals(1, both(3.9, 3.9).size());
        String hot = both(7, 7).get(1);
        assertTrue(
                hot.startsWith("Too hot: the reference tone would come back 11.0 dB below"), hot);
    }

    @Test
    void nothingAndOneChannelAreTold() {
        Readings none = readings(View.GAINS, ChannelSet.BOTH, noise(), noise());
        assertTrue(
                new LevelWords(ENGLISH)
                        .of(none)
                        .get(0)
                        .startsWith("Nothing comes back. Check the cables"));
        Readings one = readings(View.GAINS, ChannelSet.BOTH, tone(0, 0.5), noise());
        assertTrue(
                new LevelWords(ENGLISH)
                        .of(one)
                        .get(0)
                        .startsWith("Only left comes back. Check the cable"));
    }

    @Test
    void swappedChannelsAreTold() {
        Readings swapped = readings(View.GAINS, ChannelSet.LEFT, tone(-45, 0.5), tone(0, 0.5));
        assertTrue(new LevelWords(ENGLISH).of(swapped).get(0).contains("the channels are swapped"));
        Readings other = readings(View.GAINS, ChannelSet.RIGHT, tone(-1, 0.5), noise());
        assertTrue(
                new LevelWords(ENGLISH)
                        .of(other)
                        .get(0)
                        .startsWith("Only right is sent and left comes back: the channels are"));
    }

    @Test
    void oneChannelTellsWhatLeaks() {
        Readings left = readings(View.GAINS, ChannelSet.LEFT, tone(0, 0.5), tone(-42, 0.5));
        assertEquals(
                List.of(
                        "Left comes back at the level at which it is sent.",
                        "42.0 dB lower it leaks into right."),
                new LevelWords(ENGLISH).of(left));
        Readings clean = readings(View.GAINS, ChannelSet.LEFT, tone(0, 0.5), noise());
        assertEquals("Nothing of it is heard on right.", new LevelWords(ENGLISH).of(clean).get(1));
    }

    @Test
    void distortionAboveThreePercentIsTold() {
        Readings r = readings(View.GAINS, ChannelSet.BOTH, tone(0, 2.9), tone(0, 3.6));
        assertEquals(2, new LevelWords(ENGLISH).of(r).size());
        assertTrue(new LevelWords(ENGLISH).of(r).get(1).startsWith("Right distorts, K3 3.6 %"));
    }

    @Test
    void aSingleInputIsEnough() {
        Readings r = readings(View.GAINS, ChannelSet.BOTH, tone(-2, 0.5));
        assertTrue(
                new LevelWords(ENGLISH)
                        .of(r)
                        .get(0)
                        .startsWith("The return comes back 2.0 dB low: raise"));
    }

    private static Readings azimuth(PairReading... course) {
        AzimuthTrack track = AzimuthTrack.begin();
        for (PairReading p : course) {
            track = track.with(p);
        }
        Readings r = readings(View.AZIMUTH, ChannelSet.BOTH, tone(0, null), tone(0, null));
        return new Readings(
                r.stage(),
                true,
                r.desk(),
                List.of(),
                null,
                course[course.length - 1],
                track,
                List.of(),
                List.of(),
                r.delay(),
                r.peaks(),
                0);
    }

    private static PairReading delay(double microseconds) {
        return new PairReading(PairReading.Kind.DELAY, microseconds, 0.1, 0, false, -0.1);
    }

    @Test
    void azimuthTellsTheWayAndWhenToStop() {
        assertTrue(
                new Words(ENGLISH).of(azimuth(delay(40))).get(0).contains("record head a little"));
        assertTrue(
                new Words(ENGLISH)
                        .of(azimuth(delay(40), delay(30)))
                        .get(0)
                        .startsWith("Getting better"));
        assertTrue(
                new Words(ENGLISH)
                        .of(azimuth(delay(-30), delay(-40)))
                        .get(0)
                        .startsWith("Getting worse"));
        assertTrue(new Words(ENGLISH).of(azimuth(delay(-2.9))).get(0).contains("stop here"));
        assertTrue(
                new Words(ENGLISH)
                        .of(azimuth(new PairReading(PairReading.Kind.DELAY, 1, 1, 0, true, -20.0)))
                        .get(0)
                        .contains("opposite polarity"));
        assertTrue(
                new Words(ENGLISH)
                        .of(
                                azimuth(
                                        new PairReading(
                                                PairReading.Kind.ONE_TONE,
                                                30,
                                                0,
                                                100,
                                                false,
                                                null)))
                        .get(0)
                        .contains("whole periods of 100.0 µs"));
        assertTrue(
                new Words(ENGLISH)
                        .of(azimuth(PairReading.unrelated()))
                        .get(0)
                        .contains("too little"));
    }

    private static List<String> bias(BiasTrack track) {
        Readings r = readings(View.BIAS, ChannelSet.BOTH, tone(0, null), tone(0, null));
        return new Words(ENGLISH)
                .of(
                        new Readings(
                                r.stage(),
                                true,
                                r.desk(),
                                r.tones(),
                                null,
                                null,
                                r.azimuth(),
                                List.of(track, track),
                                List.of(),
                                r.delay(),
                                r.peaks(),
                                0));
    }

    @Test
    void biasTellsTheSideAndHowFar() {
        assertTrue(bias(BiasTrack.begin()).get(0).contains("begin with too little bias"));
        BiasTrack over = new BiasTrack(BiasTrack.Side.OVER, -50, -40, -42.5);
        assertEquals("Right: over-biased by 2.5 dB.", bias(over).get(1));
        assertTrue(bias(over).get(2).contains("2 to 4 dB at 10 kHz are common practice"));
        for (BiasTrack.Side side : List.of(BiasTrack.Side.BACK, BiasTrack.Side.UNKNOWN)) {
            assertTrue(bias(new BiasTrack(side, -50, -40, -41)).get(0).contains("press c"));
        }
    }
}
