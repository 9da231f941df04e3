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
import org.junit.jupiter.params.provider.ValueSource;

/** A programme of twelve tones of five seconds, one after the other. */
class TimeStretchTest {

    private static final int RATE = Scene.RATE;
    private static final double SECONDS = 62;
    private static final HeardPart ALL = new HeardPart(0, 62, 60, 1, 1, 1, true, true);

    private static final List<Scene.Part> PARTS = parts();
    private static final CueSheet SHEET = sheet();
    private static final SpectralTrace PROGRAMME =
            new Scene(SECONDS).with(0.1, PARTS).trace().withoutSilence();

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

    private static OptionalDouble look(
            CueSheet sheet,
            UnaryOperator<Scene.Part> moved,
            double stretch,
            double byPitch,
            HeardPart part) {
        List<Scene.Part> parts = PARTS.stream().map(moved).toList();
        SpectralTrace recording =
                new Scene(SECONDS * stretch + 4).with(0.1, parts).withHiss(1e-4).trace();
        return new TimeStretch(sheet, PROGRAMME, recording)
                .of(new CoarseSearch.Match(2, stretch, 1), part, byPitch);
    }

    /** Longer at the same pitch, and at the pitch of a tape that ran 3 % slow. */
    @ParameterizedTest
    @ValueSource(doubles = {0.005, 0.02, -0.02})
    void evenGrowthBesideThePitchIsAStretch(double longer) {
        OptionalDouble same = look(SHEET, p -> p.lengthened(2, 1 + longer), 1 + longer, 1, ALL);
        assertEquals(longer, same.orElseThrow(), 1e-9);
        double slow = 1.03;
        double both = slow * (1 + longer);
        OptionalDouble alsoSlow =
                look(
                        SHEET,
                        p -> new Scene.Part(2 + both * p.from(), 2 + both * p.to(), p.hz() / slow),
                        both,
                        slow,
                        ALL);
        assertEquals(longer, alsoSlow.orElseThrow(), 1e-9);
    }

    @Test
    void tapeChangesBothTogether() {
        assertTrue(look(SHEET, p -> p.played(2, 1.02), 1.02, 1.02, ALL).isEmpty());
        // what a transport drifts by is less than a quarter of a percent
        assertTrue(look(SHEET, p -> p.lengthened(2, 1.002), 1.002, 1, ALL).isEmpty());
    }

    /** One and a half seconds missing after the sixth tone: the length is 2.4 % less, in a step. */
    @Test
    void soundThatIsMissingAtOnePlaceIsNoStretch() {
        UnaryOperator<Scene.Part> gone =
                p -> new Scene.Part(2 + late(p.from()), 2 + late(p.to()), p.hz());
        assertTrue(look(SHEET, gone, 1 - 1.5 / SECONDS, 1, ALL).isEmpty());
    }

    private static double late(double seconds) {
        return seconds - (seconds > 33 ? 1.5 : 0);
    }

    /** The length says 2 %, what the edges grow by 1 %: the two are not of one cause. */
    @Test
    void lengthAndEdgesMustAgree() {
        assertTrue(look(SHEET, p -> p.lengthened(2.3, 1.01), 1.02, 1, ALL).isEmpty());
    }

    @Test
    void littleOrUnlikeSoundTellsNothing() {
        UnaryOperator<Scene.Part> longer = p -> p.lengthened(2, 1.02);
        HeardPart little = new HeardPart(0, 62, 44, 0.74, 1, 1, true, true);
        assertTrue(look(SHEET, longer, 1.02, 1, little).isEmpty());
        HeardPart unlike = new HeardPart(0, 62, 60, 1, 1, 0.84, true, true);
        assertTrue(look(SHEET, longer, 1.02, 1, unlike).isEmpty());
        HeardPart enough = new HeardPart(0, 62, 46, 0.76, 1, 0.86, true, true);
        assertTrue(look(SHEET, longer, 1.02, 1, enough).isPresent());
    }

    /** What comes before the first tone is silence, which has no colour to tell its edge by. */
    @Test
    void eightEdgesAreNeeded() {
        UnaryOperator<Scene.Part> longer = p -> p.lengthened(2, 1.02);
        assertTrue(look(first(8), longer, 1.02, 1, ALL).isPresent());
        assertTrue(look(first(7), longer, 1.02, 1, ALL).isEmpty());
    }

    private static CueSheet first(int tones) {
        return new CueSheet(
                RATE,
                SHEET.frames(),
                -18,
                null,
                SHEET.cues(Cue.Tone.class).map(c -> (Cue) c).limit(tones).toList());
    }
}
