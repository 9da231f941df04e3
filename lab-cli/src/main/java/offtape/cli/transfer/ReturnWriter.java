package offtape.cli.transfer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.cli.capture.StopSignal;
import offtape.cli.transfer.TransferEntry.Outcome;
import offtape.core.align.Alignment;
import offtape.core.align.MarkedSound;
import offtape.core.audio.AudioSource;
import offtape.core.fault.RefusedOutputException;
import offtape.core.output.DiskTrouble;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/** Writes what came back of a stem, and what is to be said of it. */
final class ReturnWriter {

    private static final Sentences SAID = Sentences.near(ReturnWriter.class);

    /** Where recordings are kept in which the stem was not found. */
    private static final String KEPT = "returns/";

    /** What came back this far under the marks that were sent is noise. */
    private static final double NOISE_DB = -40;

    private final TransferPlan plan;
    private final OutputFolder folder;
    private final StopSignal stop;

    ReturnWriter(TransferPlan plan, OutputFolder folder, StopSignal stop) {
        this.plan = plan;
        this.folder = folder;
        this.stop = stop;
    }

    /** Writes a return that was found. */
    TransferEntry brought(
            Stem stem,
            TransferSettings settings,
            AudioSource heard,
            Alignment found,
            boolean isClipped) {
        StemReturn back =
                new StemReturn(heard, found, settings.driveDb(), stem.frames(), settings.isFloat());
        Path file = folder.path(stem.output());
        back.write(file, stem.note(), stop);
        return new TransferEntry(
                stem.output(),
                stem.file().getFileName().toString(),
                stem.sha256(),
                settings,
                isClipped ? Outcome.CLIPPED : Outcome.DONE,
                TransferReasons.mind(isClipped, back, settings, found),
                path(stem, found),
                new TransferEntry.Levels(
                        stem.levels().peakDbfs(),
                        back.levels().peakDbfs(),
                        stem.levels().rmsDbfs(),
                        back.levels().rmsDbfs(),
                        back.encoding()),
                Sha256.ofFile(file));
    }

    private static TransferEntry.Path path(Stem stem, Alignment found) {
        double played =
                StemPass.LEAD_S * stem.sampleRateHz() + MarkedSound.soundFrame(stem.sampleRateHz());
        return new TransferEntry.Path(
                1000 * (found.startFrame() - played) / stem.sampleRateHz(),
                found.fastPpm(),
                found.levelChangeDb(),
                found.gains().stream()
                        .map(
                                g ->
                                        new TransferEntry.Channel(
                                                Decibels.ofAmplitude(Math.abs(g)),
                                                g < 0 ? "inverted" : "normal"))
                        .toList());
    }

    /** Keeps a recording in which a stem was not found, if there is anything in it. */
    TransferEntry notFound(
            Stem stem, TransferSettings settings, double peak, String why, Path raw) {
        if (peak < plan.markPeak() * Decibels.toAmplitude(NOISE_DB)) {
            return TransferEntry.without(
                    stem, settings, Outcome.SILENT, TransferReasons.silent(peak));
        }
        Path kept = folder.path(KEPT + stem.output());
        try {
            Files.move(raw, kept);
        } catch (IOException e) {
            throw new RefusedOutputException(
                    SAID.say(
                            "not-written",
                            folder.directory().resolve(KEPT + stem.output()),
                            DiskTrouble.words(e)),
                    e);
        }
        return TransferEntry.without(
                stem,
                settings,
                Outcome.FAILED,
                SAID.say("return-unusable", why, KEPT + stem.output()));
    }
}
