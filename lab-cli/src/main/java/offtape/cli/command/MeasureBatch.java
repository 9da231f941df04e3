package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import offtape.cli.batch.BatchEntry;
import offtape.cli.batch.BatchJob;
import offtape.cli.batch.Seal;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChannelChoice;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.text.Language;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.batch.BatchRow;
import offtape.report.batch.BatchState;
import offtape.report.judge.Decider;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.mode.ModeQuestion;
import offtape.report.render.SessionFiles;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;

/**
 * Measures each return of a list as {@code measure} does a single one, and asks nobody. What its
 * line says goes before what is said of all.
 */
final class MeasureBatch implements BatchJob {

    private static final Sentences SAID = Sentences.near(MeasureBatch.class);

    private final Path programme;
    private final ChannelChoice channels;
    private final SessionSaid said;
    private final Capture capture;
    private final String loopbackSha256;
    private final Judgement judgement;
    private final Language language;
    private final boolean force;
    private final Map<Path, String> programmes = new ConcurrentHashMap<>();

    /**
     * What holds for all.
     *
     * @param programme folder of the programme, or null
     * @param channels which channels, or null for the first two
     * @param loopbackSha256 digest of the results of the loopback, or null
     * @param language of the reports
     * @param force whether files in the way of a session are overwritten
     */
    MeasureBatch(
            Path programme,
            ChannelChoice channels,
            SessionSaid said,
            Capture capture,
            String loopbackSha256,
            Judgement judgement,
            Language language,
            boolean force) {
        this.programme = programme;
        this.channels = channels;
        this.said = said;
        this.capture = capture;
        this.loopbackSha256 = loopbackSha256;
        this.judgement = judgement;
        this.language = language;
        this.force = force;
    }

    @Override
    public long bytes(BatchEntry entry) {
        return Stream.of(entry.file(), programmeOf(entry).resolve(ProgrammeFolder.SOUND))
                .mapToLong(MeasureBatch::size)
                .max()
                .orElse(0);
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            // that it is not there is told when it is read
            return 0;
        }
    }

    @Override
    public BatchRow done(BatchEntry entry, Path session) {
        Capture how = captureOf(entry);
        String inputs = inputs(entry, how);
        Optional<Seal> seal = Seal.in(session);
        boolean unchanged = seal.isPresent() && seal.get().isOf(entry.file(), inputs);
        if (!unchanged) {
            measure(entry, how, inputs, session);
        }
        // read back in both cases, so that the summary is the same whichever run measured it
        return BatchRow.of(
                entry.name(),
                entry.written(),
                unchanged ? BatchState.UNCHANGED : BatchState.MEASURED,
                ResultsReader.read(session));
    }

    private void measure(BatchEntry entry, Capture how, String inputs, Path session) {
        String[] names =
                Stream.concat(Arrays.stream(SessionFiles.names()), Stream.of(Seal.FILE))
                        .toArray(String[]::new);
        try (OutputFolder folder = OutputFolder.open(session, force, names)) {
            Results measured =
                    Sessions.measure(
                            List.of(entry.file()),
                            sound -> channels(entry, sound),
                            programmeOf(entry),
                            said.with(entry),
                            how,
                            new PartTimes(),
                            i -> {});
            Results results = Decider.decided(measured, judgement.limits(), judgement.economics());
            SessionFiles.write(SessionFiles.texts(results, judgement.limits(), language), folder);
            Seal.put(folder, measured.session().recordingSha256(), inputs);
            folder.commit();
        }
    }

    private Path programmeOf(BatchEntry entry) {
        return entry.programme() == null ? programme : entry.programme();
    }

    private ChannelChoice choice(BatchEntry entry) {
        return entry.channels() == null ? channels : entry.channels();
    }

    private AudioSource channels(BatchEntry entry, AudioSource sound) {
        ChannelChoice choice = choice(entry);
        try {
            return choice == null ? ChannelChoice.firstTwo(sound) : choice.of(sound);
        } catch (IllegalArgumentException e) {
            throw new UnusableInputException(e.getMessage() + ".", e);
        }
    }

    private Capture captureOf(BatchEntry entry) {
        CaptureMode mode = entry.mode() == null ? capture.mode() : entry.mode();
        if (mode == CaptureMode.LOOPBACK && capture.loopback() != null) {
            throw new UnusableInputException(SAID.say("batch-loopback", entry.written()));
        }
        return new Capture(
                mode, ModeQuestion.NOBODY, capture.headSpacingMm(), capture.loopback(), 1);
    }

    /** The digest of everything but the recording that the results come from. */
    private String inputs(BatchEntry entry, Capture how) {
        Map<String, String> inputs = new LinkedHashMap<>();
        inputs.put("software", Version.text());
        inputs.put(
                "programme",
                programmes.computeIfAbsent(programmeOf(entry), MeasureBatch::programmeSha256));
        inputs.put("channels", String.valueOf(choice(entry)));
        inputs.put("said", said.with(entry).toString());
        inputs.put("mode", String.valueOf(how.mode()));
        inputs.put("headSpacingMm", String.valueOf(how.headSpacingMm()));
        inputs.put("loopback", String.valueOf(loopbackSha256));
        inputs.put("judgement", judgement.toString());
        if (language != Language.ENGLISH) {
            inputs.put("language", language.code());
        }
        return Sha256.ofText(ResultsJson.write(inputs));
    }

    private static String programmeSha256(Path folder) {
        // opened first, since that tells best what is wrong with it
        ProgrammeFolder.open(folder).close();
        return Sha256.ofFile(folder.resolve(ProgrammeFolder.SHEET))
                + Sha256.ofFile(folder.resolve(ProgrammeFolder.SOUND));
    }
}
