package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.WavFile;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.Sha256;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.report.measure.Measurement;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Measures a recording file against a programme folder. */
final class Sessions {

    private Sessions() {}

    static Results measure(Path recording, Path programmeFolder, SessionOptions said, String mode) {
        try (Programme programme = ProgrammeFolder.open(programmeFolder);
                WavFile sound = AudioFiles.open(recording)) {
            Session session =
                    new Session(
                            said.machineName(),
                            said.tape(),
                            said.tapeSpeedMmPerS(programme.sheet().tapeSpeedMmPerS()),
                            mode,
                            madeAt(recording),
                            said.note(),
                            Version.text(),
                            Sha256.ofFile(recording),
                            said.tracks());
            return Measurement.run(
                    programme,
                    sound,
                    session,
                    sound.notes().stream().map(n -> sound.name() + ": " + n + ".").toList());
        }
    }

    /** When a recording was made, by the time stamp of its file, ISO 8601. */
    static String madeAt(Path recording) {
        try {
            Instant modified = Files.getLastModifiedTime(recording).toInstant();
            return modified.truncatedTo(ChronoUnit.SECONDS).toString();
        } catch (IOException e) {
            throw new UnusableInputException(recording + " can no longer be read.", e);
        }
    }
}
