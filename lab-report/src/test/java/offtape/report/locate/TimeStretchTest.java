package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A programme of twelve tones of five seconds, one after the other. */
class TimeStretchTest {

    /** Enough for tones up to 3.2 kHz. */
    private static final int RATE = 8000;

    private static final double SECONDS = 62;
    private static final HeardPart ALL = new HeardPart(0, 62, 60, 1, 1, 1, true, true);

    private static final List<Scene.Part> PARTS = parts();
    private static final CueSheet SHEET = sheet();
    private static final SpectralTrace PROGRAMME =
            new Scene(SECONDS, RATE).with(0.1, PARTS).trace().withoutSilence();

    /** A return from 2 s on, 2 % longer at the pitch it had. */
    private static final SpectralTrace LONGER = recording(p -> p.lengthened(2, 1.02), 1.02);

    private static List<Scene.Part> parts() {
        List<Scene.Part> out = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            out.add(new Scene.Part(1 + 5 * k, 6 + 5 * k, 400 * Math.pow(2, k % 4)));
        }
        return out;
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Silence("quiet", ChannelSet.BOTH, RATE / 4, RATE / 2));
        for (Scene.Part p : PARTS) {
            cues.add(
                    new Cue.Tone(
                            "t" + cues.size(),
                            ChannelSet.BOTH,
                            (long) (p.from() * RATE),
                            5L * RATE,
                            p.hz(),
                            0));
        }
        return new CueSheet(RATE, (long) (SECONDS * RATE), -18, null, cues);
    }

    private static SpectralTrace recording(UnaryOperator<Scene.Part> moved, double stretch) {
        List<Scene.Part> parts = PARTS.stream().map(moved).toList();
        return new Scene(SECONDS * stretch + 4, RATE).with(0.1, parts).withHiss(1e-4).trace();
    }

    private static OptionalDouble look(
            UnaryOperator<Scene.Part> moved, double stretch, double byPitch) {
        return look(SHEET, recording(moved, stretch), stretch, byPitch, ALL);
    }

    private static OptionalDouble look(
            CueSheet sheet,
            SpectralTrace recording,
            double stretch,
            double byPitch,
            HeardPart part) {
        return new TimeStretch(sheet, PROGRAMME, recording)
                .of(new CoarseSearch.Match(2, stretch, 1), part, byPitch);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.005, 0.02, -0.02})
    void evenGrowthBesideThePitchIsAStretch(double longer) {
        OptionalDouble found = look(p -> p.lengthened(2, 1 + longer), 1 + longer, 1);
        assertEquals(longer, found.orElseThrow(), 1e-9);
    }

    /** At the pitch of a tape that ran 3 % slow, and of one that ran at four fifths. */
    @ParameterizedTest
    @ValueSource(doubles = {1.03, 1.25})
    void aSlowTapeMayBeStretchedToo(double slow) {
        double both = slow * 1.02;
        OptionalDouble found =
                look(
                        p -> new Scene.Part(2 + both * p.from(), 2 + both * p.to(), p.hz() / slow),
                        both,
                        slow);
        assertEquals(0.02, found.orElseThrow(), 1e-9);
    }

    @Test
    void tapeChangesBothTogether() {
        assertTrue(look(p -> p.played(2, 1.02), 1.02, 1.02).isEmpty());
        // what a transport drifts by is less than a quarter of a percent
        assertTrue(look(p -> p.lengthened(2, 1.002), 1.002, 1).isEmpty());
    }

    /**
     * 1.5 s missing in the sixth tone, 2.4 % of the length, or 0.4 s in the tenth. The straight
     * line through the edges of the latter grows as its length says, 0.65 %, but they lie beside
     * it.
     */
    @ParameterizedTest
    @CsvSource({"1.5, 26", "0.4, 46"})
    void soundThatIsMissingAtOnePlaceIsNoStretch(double missing, double in) {
        UnaryOperator<Scene.Part> gone =
                p ->
                        new Scene.Part(
                                2 + p.from() - (p.from() > in ? missing : 0),
                                2 + p.to() - (p.from() >= in ? missing : 0),
                                p.hz());
        assertTrue(look(gone, 1 - missing / SECONDS, 1).isEmpty());
    }

    /** The length says 2 %, what the edges grow by 1 %: the two are not of one cause. */
    @Test
    void lengthAndEdgesMustAgree() {
        assertTrue(look(p -> p.lengthened(2.3, 1.01), 1.02, 1).isEmpty());
    }

    /** A match 0.3 % too long, right in the middle: edges are found where they are, not there. */
    @Test
    void aMatchThatIsOffIsNoStretch() {
        assertTrue(look(p -> p.lengthened(2 + 0.003 * SECONDS / 2, 1), 1.003, 1).isEmpty());
    }

    /** Three quarters must be heard, and alike by 0.85. */
    @ParameterizedTest
    @CsvSource({"0.74, 1, false", "1, 0.84, false", "0.75, 0.85, true"})
    void littleOrUnlikeSoundTellsNothing(double share, double likeness, boolean told) {
        HeardPart part = new HeardPart(0, 62, 60 * share, share, 1, likeness, true, true);
        assertEquals(told, look(SHEET, LONGER, 1.02, 1, part).isPresent());
    }

    /** What is before the first tone and behind the last is silence, which has no colour. */
    @Test
    void eightEdgesAreNeeded() {
        assertTrue(look(tones(0, 8), LONGER, 1.02, 1, ALL).isPresent());
        assertTrue(look(tones(0, 7), LONGER, 1.02, 1, ALL).isEmpty());
        assertTrue(look(tones(4, 8), LONGER, 1.02, 1, ALL).isPresent());
        assertTrue(look(tones(5, 7), LONGER, 1.02, 1, ALL).isEmpty());
    }

    /** Cues that change half a second after another, or sooner, show nothing of their own. */
    @Test
    void edgesNearEachOtherAreOne() {
        List<Cue> cues = new ArrayList<>(tones(0, 7).cues());
        for (int k = 1; k < 5; k++) {
            long from = (1 + 5 * k) * RATE + RATE / 2;
            cues.add(new Cue.Tone("n" + k, ChannelSet.BOTH, from, 9L * RATE / 2, 400, 0));
        }
        assertTrue(look(sheet(cues), LONGER, 1.02, 1, ALL).isEmpty());
    }

    private static CueSheet tones(int first, int count) {
        return sheet(
                SHEET.cues(Cue.Tone.class).map(c -> (Cue) c).skip(first).limit(count).toList());
    }

    private static CueSheet sheet(List<Cue> cues) {
        return new CueSheet(RATE, SHEET.frames(), -18, null, cues);
    }
}
