package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.IntConsumer;
import java.util.function.UnaryOperator;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.Sha256;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.text.Sentences;
import offtape.core.transport.TransportDescription;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.pass.PassMeasure;
import offtape.report.measure.pass.PassReading;
import offtape.report.measure.speed.NamedParts;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Measures recording files against a programme folder. */
final class Sessions {

    private static final Sentences SAID = Sentences.near(Sessions.class);

    private Sessions() {}

    /**
     * Measures one return, or several of one recording; one file at a time is open.
     *
     * @param channels chooses those of a recording that are measured
     * @param times told where the time goes
     * @param step told the number of each return, from 0, before it is read
     */
    static Results measure(
            List<Path> recordings,
            UnaryOperator<AudioSource> channels,
            Path programmeFolder,
            SessionSaid said,
            Capture capture,
            PartTimes times,
            IntConsumer step) {
        Map<String, Path> digests = new HashMap<>();
        Results results = null;
        List<PassReading> replays = new ArrayList<>();
        try (Programme opened = ProgrammeFolder.open(programmeFolder)) {
            Programme programme = new Programme(opened.sheet(), times.counted(opened.audio()));
            for (int i = 0; i < recordings.size(); i++) {
                step.accept(i);
                Path recording = recordings.get(i);
                try (AudioFile sound = AudioFiles.open(recording)) {
                    CompletableFuture<String> reading =
                            Background.start(() -> Sha256.ofFile(recording));
                    AudioSource chosen = channels.apply(times.counted(sound));
                    Measurement found = times.of("locate", () -> Measurement.of(programme, chosen));
                    String digest = Background.result(reading);
                    requireNew(digest, recording, digests);
                    List<String> notes =
                            sound.notes().stream().map(n -> sound.name() + ": " + n + ".").toList();
                    if (i == 0) {
                        Session session = session(said, programme, recording, digest);
                        results = times.of("measure", () -> found.results(session, capture, notes));
                    }
                    if (recordings.size() > 1) {
                        String name = recording.getFileName().toString();
                        List<String> further = i == 0 ? List.of() : notes;
                        replays.add(times.of("measure", () -> found.pass(name, digest, further)));
                    }
                }
            }
        }
        return named(
                replays.isEmpty() ? results : PassMeasure.added(results, replays),
                said.transport());
    }

    private static Session session(
            SessionSaid said, Programme programme, Path recording, String digest) {
        return new Session(
                said.machineName(),
                said.tape(),
                said.tapeSpeedMmPerS(programme.sheet().tapeSpeedMmPerS()),
                null,
                madeAt(recording),
                said.note(),
                Version.text(),
                digest,
                said.tracks());
    }

    /** The same file twice would pass for a machine without fault. */
    private static void requireNew(String digest, Path recording, Map<String, Path> earlier) {
        Path same = earlier.putIfAbsent(digest, recording);
        if (same != null) {
            throw new UnusableInputException(SAID.say("same-recording", same, recording));
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
            throw new UnusableInputException(SAID.say("no-longer-readable", recording), e);
        }
    }
}
