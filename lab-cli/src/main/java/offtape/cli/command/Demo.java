package offtape.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.fault.Background;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFile;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammePlan;
import offtape.core.standard.TrackSpacing;
import offtape.core.text.Language;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.TapeSpeed;
import offtape.report.compare.Comparison;
import offtape.report.judge.Decider;
import offtape.report.judge.LimitSet;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.render.ReportWriter;
import offtape.report.render.SessionFiles;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * The demo's scenario: a machine from an attic, measured as bought and again after its service.
 * Only the machine is invented; its return is computed and measured like any other.
 */
final class Demo {

    /** Name of the page with both sessions. */
    static final String COMPARISON = "before-and-after.html";

    /** Folder of the first session. */
    static final String BEFORE = "before";

    /** Folder of the second session. */
    static final String AFTER = "after";

    private static final String PROGRAMME = "programme";
    private static final String TRANSPORT = "transport";
    private static final String LIMITS = "din45500-4";
    private static final int STEPS = 6;

    private final OutputFolder folder;
    private final Terminal terminal;
    private final Speech speech;
    private final Language language;
    private final AtomicInteger done = new AtomicInteger();

    Demo(OutputFolder folder, Terminal terminal, Language language) {
        this.folder = folder;
        this.terminal = terminal;
        this.speech = Speech.of(terminal);
        this.language = language;
    }

    /** Both sessions. */
    record Outcome(Results before, Results after) {}

    /** Runs the whole job into the folder, whose owner commits it. */
    Outcome run() {
        step("demo.writing");
        Path programme = folder.path(PROGRAMME);
        try (OutputFolder inner = OutputFolder.open(programme, false)) {
            ProgrammePlan plan =
                    new ProgrammePlan(
                            new TapeSpeed(190.5),
                            48_000,
                            ProgrammePlan.DEFAULT_REFERENCE_DBFS,
                            false);
            ProgrammeFiles.write(plan.sheet(), inner, language);
            inner.commit();
        }
        folder.write("transport.json", description(TRANSPORT).getBytes(StandardCharsets.UTF_8));
        CompletableFuture<Results> after = Background.start(() -> session(AFTER));
        CompletableFuture<Results> before = Background.start(() -> session(BEFORE));
        Outcome outcome = new Outcome(Background.result(before), Background.result(after));
        step("demo.comparing");
        Comparison comparison = Comparison.of(outcome.before(), outcome.after(), List.of());
        String page = ReportWriter.html(comparison, outcome.before(), outcome.after(), language);
        folder.write(COMPARISON, page.getBytes(StandardCharsets.UTF_8));
        return outcome;
    }

    /** Tells of a step by the key of its words. */
    private void step(String what) {
        terminal.progress(done.incrementAndGet(), STEPS, speech.say(what));
    }

    private Results session(String name) {
        step("demo.playing-" + name);
        MachineSpec machine = MachineSpec.fromJson(description(name));
        Path recording = folder.path(name + "-return.wav");
        try (Programme programme = ProgrammeFolder.open(folder.path(PROGRAMME))) {
            try (OutputFile file =
                    OutputFile.open(
                            recording,
                            false,
                            Simulation.truthName(recording),
                            Simulation.motionName(recording))) {
                Simulation.run(programme, machine, file);
                file.commit();
            }
            folder.write(name + "-machine.json", machine.toJson().getBytes(StandardCharsets.UTF_8));
            step("demo.measuring-" + name);
            return measured(programme, machine, name, recording);
        }
    }

    private Results measured(
            Programme programme, MachineSpec machine, String name, Path recording) {
        try (AudioFile sound = AudioFiles.open(recording)) {
            Session session =
                    new Session(
                            machine.name(),
                            "calibration tape (simulated)",
                            machine.tapeSpeedMmPerS(),
                            machine.mode().key(),
                            Sessions.madeAt(recording),
                            machine.note(),
                            Version.text(),
                            Sha256.ofFile(recording),
                            TrackSpacing.named("two-track"));
            Results named =
                    Sessions.named(
                            Measurement.run(
                                    programme,
                                    sound,
                                    session,
                                    Capture.of(machine.mode()),
                                    sound.notes()),
                            TransportDescription.fromJson(description(TRANSPORT)));
            LimitSet limits = LimitSet.of(LIMITS);
            Results results = Decider.decided(named, limits, null);
            try (OutputFolder inner = OutputFolder.open(folder.path(name), false)) {
                SessionFiles.write(SessionFiles.texts(results, limits, language), inner);
                inner.commit();
            }
            return results;
        }
    }

    private static String description(String name) {
        try (InputStream in = Demo.class.getResourceAsStream("demo-" + name + ".json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
