package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.Sha256;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.transport.TransportDescription;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.speed.NamedParts;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Measures a recording file against a programme folder. */
final class Sessions {

    private Sessions() {}

    static Results measure(
            Path recording,
            ChannelOptions channels,
            Path programmeFolder,
            SessionOptions said,
            Capture capture) {
        TransportDescription transport = said.transport();
        try (Programme programme = ProgrammeFolder.open(programmeFolder);
                AudioFile sound = AudioFiles.open(recording)) {
            Session session =
                    new Session(
                            said.machineName(),
                            said.tape(),
                            said.tapeSpeedMmPerS(programme.sheet().tapeSpeedMmPerS()),
                            null,
                            madeAt(recording),
                            said.note(),
                            Version.text(),
                            Sha256.ofFile(recording),
                            said.tracks());
            Results results =
                    Measurement.run(
                            programme,
                            channels.of(sound),
                            session,
                            capture,
                            sound.notes().stream()
                                    .map(n -> sound.name() + ": " + n + ".")
                                    .toList());
            return named(results, transport);
        }
    }

    /** The results with the lines of speed named by part, if dimensions are given. */
    static Results named(Results results, TransportDescription transport) {
        return transport == null
                ? results
                : results.withSpeed(
                        NamedParts.name(
                                results.speed(), transport, results.session().tapeSpeedMmPerS()));
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
