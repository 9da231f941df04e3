package offtape.core.align;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Finds a marked sound in the recording of its return.
 *
 * <p>Time is that of the first channel unless another one shows the marks clearly better, and is
 * common to all channels, so that they keep their time against each other. What differs from a path
 * that changes nothing by less than the marks can tell (three standard uncertainties of each) is
 * taken for such a path: whole frames, no drift, a gain of exactly 1. On a digital path samples
 * then come back as they were; elsewhere what is left lies under the path's own noise.
 */
public final class MarkedReturn {

    private static final Sentences SAID = Sentences.near(MarkedReturn.class);

    /** How many standard uncertainties a difference may have and still be none. */
    private static final double COVERAGE = 3;

    /** A channel tells the time if it is not much less clear than the clearest one. */
    private static final double CLEAR_ENOUGH = 0.9;

    private static final double MOST_DRIFT = 0.01;
    private static final double AROUND_S = 0.4;

    /** By how much the speed within the marks may differ from that between them: wow. */
    private static final double MOST_WOW = 0.005;

    private final MarkedSound sent;
    private final AudioSource recording;
    private final MarkSearch search;

    /** Both marks on one channel. */
    private record Pair(FoundMark first, FoundMark second) {

        double likeness() {
            return Math.min(first.likeness(), second.likeness());
        }

        double doubtFrames() {
            return Math.hypot(first.doubtFrames(), second.doubtFrames());
        }

        double gain() {
            double size = (first.gain() + second.gain()) / 2;
            double doubt = Math.max(first.doubtOfGain(), second.doubtOfGain());
            return Math.abs(size - 1) < COVERAGE * doubt ? 1 : size;
        }

        double levelChangeDb() {
            return 20 * Math.log10(second.gain() / first.gain());
        }
    }

    /**
     * A return.
     *
     * @param sent what was sent
     * @param recording what came back, of the same sample rate
     */
    public MarkedReturn(MarkedSound sent, AudioSource recording) {
        this.sent = sent;
        this.recording = recording;
        this.search = new MarkSearch(sent.sampleRateHz());
    }

    /**
     * Finds it.
     *
     * @param latestFrame up to where in the recording its first mark may begin
     * @throws UnusableInputException if a mark is missing on any channel
     */
    public Alignment find(long latestFrame) {
        List<Pair> pairs =
                IntStream.range(0, recording.channels())
                        .mapToObj(c -> pair(c, latestFrame))
                        .toList();
        double most = pairs.stream().mapToDouble(Pair::likeness).max().orElseThrow();
        Pair clock =
                pairs.stream()
                        .filter(p -> p.likeness() >= CLEAR_ENOUGH * most)
                        .findFirst()
                        .orElseThrow();
        double between = clock.second().frame() - clock.first().frame();
        double step = told(between / sent.secondMarkFrame(), clock);
        List<Double> gains = new ArrayList<>();
        double change = 0;
        for (int c = 0; c < pairs.size(); c++) {
            Pair p = pairs.get(c);
            boolean isInverted = search.isInverted(recording, c, 1 / step, p.first(), p.second());
            gains.add(isInverted ? -p.gain() : p.gain());
            change = Math.abs(p.levelChangeDb()) > Math.abs(change) ? p.levelChangeDb() : change;
        }
        return new Alignment(start(step, clock), step, gains, change, isBroken(step, clock));
    }

    private Pair pair(int channel, long latestFrame) {
        long length = sent.frames() - sent.secondMarkFrame();
        FoundMark first = found(channel, 0, latestFrame + length, "no-mark-before");
        long begin = Math.round(first.frame() - length / 2.0) + sent.secondMarkFrame();
        long around =
                Math.round(AROUND_S * sent.sampleRateHz() + MOST_DRIFT * sent.secondMarkFrame());
        // the pauses and the sound are longer than that: it holds nothing of the first mark
        FoundMark second =
                found(channel, begin - around, begin + length + around, "no-mark-behind");
        return new Pair(first, second);
    }

    private FoundMark found(int channel, long from, long to, String key) {
        return search.find(recording, channel, from, to, sent.markPeak())
                .orElseThrow(() -> new UnusableInputException(SAID.say(key, channel + 1)));
    }

    private double told(double step, Pair clock) {
        double doubt = clock.doubtFrames() / sent.secondMarkFrame();
        return Math.abs(step - 1) < COVERAGE * doubt ? 1 : step;
    }

    // the middle of both marks is where a straight line through them is known best
    private double start(double step, Pair clock) {
        double markMiddle = (sent.frames() - sent.secondMarkFrame()) / 2.0;
        double sentMiddle = markMiddle + sent.secondMarkFrame() / 2.0;
        double heardMiddle = (clock.first().frame() + clock.second().frame()) / 2;
        double start = heardMiddle + step * (sent.soundFrame() - sentMiddle);
        boolean isWhole =
                step == 1 && Math.abs(start - Math.rint(start)) < COVERAGE * clock.doubtFrames();
        return isWhole ? Math.rint(start) : start;
    }

    private static boolean isBroken(double step, Pair clock) {
        double within = (clock.first().rate() + clock.second().rate()) / 2;
        return Math.abs(1 / step - within) > MOST_WOW;
    }
}
