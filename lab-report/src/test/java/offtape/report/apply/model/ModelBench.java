package offtape.report.apply.model;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammePlan;
import offtape.core.programme.ProgrammeWriter;
import offtape.core.unit.TapeSpeed;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Measures a simulated machine with its noise and motion, as a session would. */
final class ModelBench {

    private ModelBench() {}

    /** The results of a machine on the programme of users, short or whole. */
    static Results measured(ModelMachines.Machine machine, boolean brief, Path folder) {
        Path place = folder.resolve(machine.name().replaceAll("[^a-z0-9]+", "-"));
        CueSheet sheet =
                new ProgrammePlan(new TapeSpeed(machine.mmPerS()), machine.rateHz(), -18, brief)
                        .sheet();
        try (OutputFolder out = OutputFolder.open(place, false)) {
            ProgrammeWriter.write(sheet, out);
            out.commit();
        }
        MachineSpec spec = machine.draft().spec();
        Path wav = place.resolve("return.wav");
        try (Programme programme = ProgrammeFolder.open(place)) {
            MachineRun run = SimulatedMachine.of(spec).run(programme.sheet());
            WavFormat format = new WavFormat(run.sampleRateHz(), 2, WavEncoding.PCM_24);
            try (WavWriter writer = WavWriter.create(wav, format)) {
                run.play(
                        programme.audio(),
                        (block, count) ->
                                writer.write(
                                        new double[][] {
                                            Arrays.copyOf(block[0], count),
                                            Arrays.copyOf(block[1], count)
                                        }));
            }
            Session session =
                    new Session(
                            machine.name(), null, machine.mmPerS(), null, null, null, "test", null);
            try (var sound = AudioFiles.open(wav)) {
                return Measurement.run(
                        programme, sound, session, Capture.of(spec.mode()), java.util.List.of());
            } finally {
                Files.delete(wav);
                Files.delete(place.resolve(ProgrammeFolder.SOUND));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
