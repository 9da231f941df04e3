package offtape.cli.transfer;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import offtape.core.align.FoundMark;
import offtape.core.align.MarkSearch;
import offtape.core.align.StraightenedSound;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;

/** The return of a marked stem: finds both marks and puts the stem back in time, level and phase. */
final class StemReturn {

    /** How far the second mark may lie from where the clock of the return puts it, as a share. */
    private static final double MOST_DRIFT = 0.03;

    private static final double MOST_DELAY_S = 3;

    private final MarkedSound sent;
    private final AudioSource recording;
    private final MarkSearch search;

    StemReturn(MarkedSound sent, AudioSource recording) {
        this.sent = sent;
        this.recording = recording;
        this.search = new MarkSearch(sent.sampleRateHz());
    }

    /**
     * What was found and the stem as it came back.
     *
     * @param sound the stem, as long as it was sent
     * @param startFrame where the stem begins in the recording
     * @param rate frames of the return a frame that was sent
     * @param gain of the path, as a factor, without its sign
     * @param inverted whether the path turns polarity over
     */
    record Found(
            StraightenedSound sound,
            double startFrame,
            double rate,
            double gain,
            boolean inverted) {}

    /**
     * Finds the stem.
     *
     * @param leadFrames silence that was played before the marked sound
     * @param stemFrames length of the stem
     * @param drive factor with which it was sent, which is taken back
     * @throws UnusableInputException if a mark did not come back
     */
    Found find(long leadFrames, long stemFrames, double drive) {
        int rate = sent.sampleRateHz();
        double length = sent.secondMarkFrame();
        int span = (int) (leadFrames + (MOST_DELAY_S + 1) * rate);
        FoundMark first = loudest(0, span).orElseThrow(() -> lost("before"));
        long near = Math.round(first.frame() + length);
        int around = (int) (MOST_DRIFT * length + 0.5 * rate);
        FoundMark second =
                loudest(near - around, 2 * around).orElseThrow(() -> lost("behind"));
        double step = (second.frame() - first.frame()) / length;
        double gain = (Math.abs(first.gain()) + Math.abs(second.gain())) / 2;
        boolean inverted = first.gain() < 0;
        double start = first.frame() + step * sent.stemFrame();
        return new Found(
                new StraightenedSound(
                        recording,
                        start,
                        step,
                        (inverted ? -1 : 1) / (gain * drive),
                        stemFrames),
                start,
                step,
                gain,
                inverted);
    }

    /** Of the channel on which the mark is clearest. */
    private Optional<FoundMark> loudest(long from, int frames) {
        List<FoundMark> found =
                IntStream.range(0, recording.channels())
                        .mapToObj(c -> search.find(recording, c, from, frames, MarkedSound.MARK_PEAK))
                        .flatMap(Optional::stream)
                        .toList();
        return found.stream()
                .reduce((a, b) -> Math.abs(a.gain()) >= Math.abs(b.gain()) ? a : b);
    }

    private UnusableInputException lost(String where) {
        return new UnusableInputException(
                "The mark "
                        + where
                        + " \""
                        + sent.name()
                        + "\" did not come back, so its return cannot be put in time. Check that the"
                        + " machine is in record and the replay head is heard, then run again; stems"
                        + " that are done are skipped.");
    }
}
