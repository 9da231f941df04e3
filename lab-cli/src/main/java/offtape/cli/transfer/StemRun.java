package offtape.cli.transfer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import offtape.cli.capture.Capture;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.SoundStream;
import offtape.cli.transfer.TransferEntry.Outcome;
import offtape.core.align.Alignment;
import offtape.core.align.MarkedReturn;
import offtape.core.align.MarkedSound;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChosenChannels;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.DiskTrouble;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/** Sends one stem, a second time if the computer was late, and brings it back. */
final class StemRun {

    private static final Sentences SAID = Sentences.near(StemRun.class);

    private final TransferPlan plan;
    private final StreamOpener devices;
    private final OutputFolder folder;
    private final StopSignal stop;
    private final TransferListener listener;
    private final ReturnWriter writer;

    StemRun(
            TransferPlan plan,
            StreamOpener devices,
            OutputFolder folder,
            StopSignal stop,
            TransferListener listener) {
        this.plan = plan;
        this.devices = devices;
        this.folder = folder;
        this.stop = stop;
        this.listener = listener;
        this.writer = new ReturnWriter(plan, folder, stop);
    }

    /** Sends a stem; what is returned tells nothing if the signal to stop was given meanwhile. */
    TransferEntry send(Stem stem, TransferSettings settings) {
        double driveDb = settings.driveDb();
        listener.begins(stem, driveDb);
        double peak = stem.sentPeak() * Decibels.toAmplitude(driveDb);
        String tooLoud = TransferReasons.tooLoud(peak, driveDb, plan.ceiling());
        if (tooLoud != null) {
            return TransferEntry.without(stem, settings, Outcome.FAILED, tooLoud);
        }
        Path raw = folder.path(stem.output() + ".incomplete.wav");
        try (AudioSource sound = stem.open(plan.preEmphasis())) {
            MarkedSound sent =
                    new MarkedSound(sound, Decibels.toAmplitude(driveDb), plan.markPeak());
            TransferEntry entry = attempt(stem, settings, sent, raw, true);
            if (entry == null && !stop.isGiven()) {
                listener.repeats(stem);
                remove(raw);
                entry = attempt(stem, settings, sent, raw, false);
            }
            return entry;
        } finally {
            remove(raw);
        }
    }

    /** Once through the machine; null if it was disturbed and another attempt is worth it. */
    private TransferEntry attempt(
            Stem stem, TransferSettings settings, MarkedSound sent, Path raw, boolean isFirst) {
        StemPass pass;
        int[] channels;
        try (SoundStream stream = devices.open(stem.sampleRateHz())) {
            String narrow = TransferReasons.tooNarrow(sent.channels(), stem.channels(), stream);
            if (narrow != null) {
                return TransferEntry.without(stem, settings, Outcome.FAILED, narrow);
            }
            pass = StemPass.of(sent, stream, raw, plan, stop, listener);
            channels = channels(stem, stream);
        }
        if (stop.isGiven() || pass.isDisturbed() && isFirst) {
            return null;
        }
        if (pass.isDisturbed()) {
            return TransferEntry.without(stem, settings, Outcome.FAILED, TransferReasons.LATE);
        }
        try (AudioFile recording = AudioFiles.open(raw)) {
            List<Integer> numbers = Arrays.stream(channels).mapToObj(c -> c + 1).toList();
            AudioSource heard = new ChosenChannels(recording, numbers, true);
            Alignment found = new MarkedReturn(sent, heard).find(pass.latestFrame());
            if (found.isBroken()) {
                return isFirst
                        ? null
                        : TransferEntry.without(
                                stem, settings, Outcome.FAILED, TransferReasons.LOST);
            }
            boolean isClipped = isClipped(stem, settings, pass, channels, found);
            return writer.brought(stem, settings, heard, found, isClipped);
        } catch (UnusableInputException e) {
            return writer.notFound(stem, settings, pass.peak(channels), e.getMessage(), raw);
        }
    }

    // the right channel's place in the recording, if there is one
    private int[] channels(Stem stem, SoundStream stream) {
        if (stem.channels() == 2) {
            return new int[] {0, 1};
        }
        return new int[] {plan.isTakenRight() ? stream.inputs() - 1 : 0};
    }

    /** A stem that was sent at full scale over a path that changes nothing reaches it rightly. */
    private static boolean isClipped(
            Stem stem, TransferSettings settings, StemPass pass, int[] channels, Alignment found) {
        double sent = stem.sentPeak() * Decibels.toAmplitude(settings.driveDb());
        return pass.isClipped(channels) && !(found.isExact() && sent >= Capture.FULL);
    }

    private static void remove(Path raw) {
        try {
            Files.deleteIfExists(raw);
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("not-removed", raw, DiskTrouble.words(e)), e);
        }
    }
}
