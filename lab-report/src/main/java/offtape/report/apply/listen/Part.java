package offtape.report.apply.listen;

import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.ItuBs1770;
import offtape.core.text.Sentences;

/**
 * The part of A that is listened to.
 *
 * @param fromFrame its first frame in A
 * @param frames its length
 */
record Part(long fromFrame, int frames) {

    private static final Sentences SAID = Sentences.near(Part.class);

    /** A page above this is refused: browsers take long to open it. */
    static final long MOST_PAGE_BYTES = 100_000_000;

    /** Two sounds of three bytes a sample, four letters for three bytes. */
    private static final int PAGE_BYTES_A_SAMPLE = 8;

    private static final double STEPS_A_SECOND = 10;

    /**
     * Chooses it: the part asked for, all that both have, or the loudest stretch of the length.
     *
     * @throws UnusableInputException if what was asked for does not lie where both sound, or the
     *     page would become too large
     */
    static Part of(AlignedPair pair, ListenChoice choice) {
        int rate = pair.a().sampleRateHz();
        long common = pair.endFrame() - pair.firstFrame();
        if (common < ListenChoice.SHORTEST_SECONDS * rate) {
            throw new UnusableInputException(
                    SAID.say(
                            "part.short",
                            pair.a().name(),
                            pair.b().name(),
                            Math.max(0, common) / (double) rate));
        }
        int most = (int) (MOST_PAGE_BYTES / PAGE_BYTES_A_SAMPLE / pair.a().channels());
        double wished = choice.lengthSeconds().orElse(ListenChoice.USUAL_SECONDS);
        int frames = (int) Math.min(common, Math.round(wished * rate));
        if (choice.lengthSeconds().isPresent() && frames > most) {
            throw tooLarge(wished, (double) most / rate);
        }
        int length = Math.min(frames, most);
        return choice.fromSeconds().isPresent()
                ? from(pair, choice.fromSeconds().getAsDouble(), length)
                : new Part(loudest(pair, length), length);
    }

    /** What is left of it where both sound. */
    Part within(AlignedPair pair) {
        long from = Math.max(fromFrame, pair.firstFrame());
        long end = Math.min(fromFrame + frames, pair.endFrame());
        return new Part(from, (int) (end - from));
    }

    private static UnusableInputException tooLarge(double wished, double mostSeconds) {
        return new UnusableInputException(
                SAID.say("part.too-large", wished, Math.floor(mostSeconds)));
    }

    private static Part from(AlignedPair pair, double seconds, int length) {
        int rate = pair.a().sampleRateHz();
        long from = Math.round(seconds * rate);
        long left = pair.endFrame() - from;
        if (from < pair.firstFrame() || left < ListenChoice.SHORTEST_SECONDS * rate) {
            throw new UnusableInputException(
                    SAID.say(
                            "part.apart",
                            seconds,
                            pair.a().name(),
                            pair.b().name(),
                            (double) pair.firstFrame() / rate,
                            (double) pair.endFrame() / rate));
        }
        return new Part(from, (int) Math.min(length, left));
    }

    private static long loudest(AlignedPair pair, int length) {
        long common = pair.endFrame() - pair.firstFrame();
        if (length == common) {
            return pair.firstFrame();
        }
        double[] powers = powers(pair.a(), pair.firstFrame(), pair.endFrame());
        int rate = pair.a().sampleRateHz();
        int steps = (int) Math.round(length * STEPS_A_SECOND / rate);
        double sum = 0;
        double most = -1;
        int best = 0;
        for (int i = 0; i < powers.length; i++) {
            sum += powers[i] - (i < steps ? 0 : powers[i - steps]);
            // the sum is rounded anew at each step: what is a hair more is not more
            if (i >= steps - 1 && sum > most * (1 + 1e-9)) {
                most = sum;
                best = i - steps + 1;
            }
        }
        long start = pair.firstFrame() + Math.round(best * rate / STEPS_A_SECOND);
        return Math.min(start, pair.endFrame() - length);
    }

    private static double[] powers(AudioSource sound, long from, long to) {
        ItuBs1770 meter = ItuBs1770.inFront(sound.sampleRateHz(), sound.channels());
        int block = sound.sampleRateHz();
        for (long at = from; at < to; at += block) {
            meter.add(sound.read(at, (int) Math.min(block, to - at)));
        }
        return meter.tenthPowers();
    }
}
