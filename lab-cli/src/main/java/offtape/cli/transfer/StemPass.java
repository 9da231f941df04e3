package offtape.cli.transfer;

import java.nio.file.Path;
import java.util.stream.IntStream;
import offtape.cli.capture.Capture;
import offtape.cli.capture.CaptureResult;
import offtape.cli.capture.PlayList;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.SoundStream;
import offtape.core.align.MarkedSound;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;

/**
 * A marked stem as it went through the machine once.
 *
 * @param recording what was recorded
 * @param latestFrame up to where in the recording the first mark may begin
 */
record StemPass(CaptureResult recording, long latestFrame) {

    /** Silence before the first mark; it tells the path's noise. */
    static final double LEAD_S = 0.5;

    /** How long computers hold sound back in their buffers at most. */
    private static final double BUFFERS_S = 2.5;

    /**
     * Sends a sound.
     *
     * @param raw file to record to, which does not exist
     */
    static StemPass of(
            MarkedSound sent,
            SoundStream stream,
            Path raw,
            TransferPlan plan,
            StopSignal stop,
            TransferListener listener) {
        WavFormat format =
                new WavFormat(stream.sampleRateHz(), stream.inputs(), WavEncoding.PCM_24);
        PlayList list = new PlayList(sent, 1, LEAD_S, plan.tailSeconds(), plan.ceiling());
        try (WavWriter wav = WavWriter.create(raw, format)) {
            CaptureResult result = new Capture(stream, stop, listener.progress()).run(list, wav);
            double latest = LEAD_S + plan.tailSeconds() + BUFFERS_S;
            return new StemPass(result, Math.round(latest * stream.sampleRateHz()));
        }
    }

    /** Whether sound was lost or a gap was played, as far as the computer tells. */
    boolean isDisturbed() {
        return !recording.marks().troubles().isEmpty();
    }

    /** Highest magnitude on some channels, counted from 0. */
    double peak(int... channels) {
        return IntStream.of(channels).mapToDouble(c -> recording.peaks()[c]).max().orElse(0);
    }

    /** Whether some channels reached full scale. */
    boolean isClipped(int... channels) {
        return peak(channels) >= Capture.FULL;
    }
}
