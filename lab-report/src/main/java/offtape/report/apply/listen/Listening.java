package offtape.report.apply.listen;

import java.math.BigInteger;
import java.util.Arrays;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.unit.Decibels;

/**
 * Two sounds ready to be told apart: alike in time and loudness, the part chosen, packed.
 *
 * @param facts all that is known of them
 * @param a samples of the first
 * @param b samples of the second
 */
public record Listening(ListenFacts facts, Pcm24 a, Pcm24 b) {

    /** From this on a blend loses at most 0.2 dB in its middle: (1 + 0.9)/2 of the power. */
    private static final double BLENDS_FROM = 0.9;

    private static final double RARE = 0.05;

    /**
     * Makes two sounds alike.
     *
     * @param first A
     * @param second B
     * @param choice what was asked for
     * @param search finds where B lies against A; gives the alignment or refuses
     * @throws UnusableInputException if they cannot be compared
     */
    public static Listening of(
            AudioSource first, AudioSource second, ListenChoice choice, AlignmentSearch search) {
        AlignedPair whole = AlignedPair.of(first, second, choice, search);
        Part wished = Part.of(whole, choice);
        AlignedPair pair = NearSearch.find(whole, wished, search).map(whole::by).orElse(whole);
        Part part = wished.within(pair);
        LevelledPair level = LevelledPair.of(pair, part);
        Pcm24 a = Pcm24.of(level.a().samples());
        Pcm24 b = Pcm24.of(level.b().samples());
        int clippedB = clippedPlacesOfFile(second, pair, part);
        ListenSound soundA = sound(level.plainA(), level.a(), level.plainA().clippedPlaces(), a);
        ListenSound soundB = sound(level.plainB(), level.b(), clippedB, b);
        double likeness = level.a().likeness(level.b());
        int rate = first.sampleRateHz();
        ListenFacts facts =
                new ListenFacts(
                        "offtape-listen",
                        1,
                        PageId.of(a, b, choice),
                        soundA,
                        soundB,
                        choice.isAligned() ? ListenTime.of(pair, part) : null,
                        rate,
                        pair.a().channels(),
                        (double) part.fromFrame() / rate,
                        (double) part.frames() / rate,
                        likeness,
                        Arrays.equals(a.bytes(), b.bytes()),
                        likeness >= BLENDS_FROM ? "blend" : "dip",
                        choice.trials(),
                        choice.isTraining(),
                        fewestRight(choice.trials()));
        return new Listening(facts, a, b);
    }

    private static ListenSound sound(
            HeardSound before, HeardSound after, int clippedPlaces, Pcm24 packed) {
        return new ListenSound(
                before.name(),
                before.loudnessLufs(),
                after.loudnessLufs() - before.loudnessLufs(),
                Decibels.ofAmplitude(after.peak()),
                clippedPlaces,
                24,
                packed.isDithered());
    }

    // interpolation rounds off what was cut, so B is looked at as it lies in its file
    private static int clippedPlacesOfFile(AudioSource second, AlignedPair pair, Part part) {
        Alignment place = pair.used().orElse(null);
        double from =
                place == null
                        ? part.fromFrame()
                        : place.startFrame() + place.step() * part.fromFrame();
        double[][] samples = second.read(Math.round(from), part.frames());
        return new HeardSound(second.name(), samples, 0).clippedPlaces();
    }

    /** The fewest right answers that guessing reaches in no more than 5 % of rounds. */
    static int fewestRight(int trials) {
        BigInteger choose = BigInteger.ONE;
        BigInteger ways = BigInteger.ZERO;
        BigInteger of = BigInteger.TWO.pow(trials);
        for (int wrong = 0; wrong < trials; wrong++) {
            ways = ways.add(choose);
            if (ways.doubleValue() / of.doubleValue() > RARE) {
                return trials - wrong + 1;
            }
            choose =
                    choose.multiply(BigInteger.valueOf(trials - wrong))
                            .divide(BigInteger.valueOf(wrong + 1));
        }
        throw new IllegalArgumentException("a round of " + trials + " trials");
    }
}
