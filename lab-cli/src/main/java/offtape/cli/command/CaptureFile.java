package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.function.Function;
import offtape.cli.capture.CaptureResult;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.TooLoudException;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.RefusedOutputException;
import offtape.core.output.DiskTrouble;
import offtape.core.output.OutputFile;
import offtape.core.text.Sentences;

/**
 * A recording on its way to the disk. Until it is whole it has a name that says so, under which it
 * stays if it is broken off: a recording is hard to repeat.
 */
final class CaptureFile implements AutoCloseable {

    private static final Sentences SAID = Sentences.near(CaptureFile.class);

    private final OutputFile output;
    private final Path growing;
    private Path place;
    private long frames;

    private CaptureFile(OutputFile output, Path growing) {
        this.output = output;
        this.growing = growing;
    }

    /**
     * Checks the place.
     *
     * @throws RefusedOutputException if it is taken or not writable
     */
    static CaptureFile begin(Path file, boolean force) {
        OutputFile output = OutputFile.open(file, force);
        return new CaptureFile(output, unusedName(output.file()));
    }

    private static Path unusedName(Path file) {
        String name = file.getFileName().toString();
        String stem = name.endsWith(".wav") ? name.substring(0, name.length() - 4) : name;
        for (int i = 1; ; i++) {
            Path path =
                    file.resolveSibling(
                            stem + (i == 1 ? ".incomplete.wav" : ".incomplete-" + i + ".wav"));
            if (!Files.exists(path)) {
                return path;
            }
        }
    }

    /**
     * Records, and gives the file its name if the recording came to its end.
     *
     * @throws SoundTroubleException if a device was lost; the message then says where the recording
     *     is kept
     * @throws RefusedOutputException if the disk refuses it, likewise
     * @throws TooLoudException if what is to be played is above the ceiling, likewise
     */
    CaptureResult record(
            SoundStream stream, CaptureNote note, Function<WavWriter, CaptureResult> recording) {
        place = growing;
        CaptureResult result;
        BroadcastNote said = note.at(Instant.now(), stream.sampleRateHz());
        try (WavWriter wav = WavWriter.create(growing, format(stream), said)) {
            result = record(recording, wav);
        }
        if (result.complete()) {
            finish();
        }
        return result;
    }

    private CaptureResult record(Function<WavWriter, CaptureResult> recording, WavWriter wav) {
        try {
            return recording.apply(wav);
        } catch (SoundTroubleException e) {
            throw new SoundTroubleException(e.getMessage() + kept(wav), e);
        } catch (RefusedOutputException e) {
            throw new RefusedOutputException(e.getMessage() + kept(wav), e);
        } catch (TooLoudException e) {
            throw new TooLoudException(e.getMessage() + kept(wav));
        } finally {
            frames = wav.frames();
        }
    }

    private String kept(WavWriter wav) {
        return wav.frames() == 0 ? "" : " " + SAID.say("kept", growing);
    }

    private static WavFormat format(SoundStream stream) {
        return new WavFormat(stream.sampleRateHz(), stream.inputs(), WavEncoding.PCM_24);
    }

    private void finish() {
        try {
            Files.move(growing, output.path(), StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new RefusedOutputException(
                    SAID.say("not-moved", output.file(), DiskTrouble.words(e), growing), e);
        }
        output.commit();
        place = output.file();
    }

    /** Where the recording lies now. */
    Path place() {
        return place;
    }

    /** Gives the place free; of a recording that was broken off at once nothing stays. */
    @Override
    public void close() {
        try (output) {
            if (growing.equals(place) && frames == 0) {
                Files.deleteIfExists(growing);
            }
        } catch (IOException e) {
            throw new RefusedOutputException(
                    SAID.say("not-removed", growing, DiskTrouble.words(e)), e);
        }
    }
}
