package offtape.report.fault;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.output.OutputFolder;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammePlan;
import offtape.core.programme.ProgrammeWriter;
import offtape.core.unit.TapeSpeed;
import offtape.report.measure.Measurement;
import offtape.report.measure.PlayedMachine;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Plays the programme that users get to simulated machines and measures what returns. */
final class Bench {

    private static final int RATE_HZ = 48_000;

    private final Path folder;
    private final Map<String, Path> programmes = new ConcurrentHashMap<>();

    /**
     * A bench.
     *
     * @param folder for programmes
     */
    Bench(Path folder) {
        this.folder = folder;
    }

    /** Everything that is measured of a machine. */
    Results measured(Workshop machine) {
        Path place =
                programmes.computeIfAbsent(
                        machine.mmPerS() + "-" + machine.full(), name -> programme(name, machine));
        try (Programme programme = ProgrammeFolder.open(place)) {
            MachineRun run = SimulatedMachine.of(machine.spec()).run(programme.sheet());
            double[][] heard = PlayedMachine.sound(run, programme.audio());
            Session session =
                    new Session("bench", null, machine.mmPerS(), null, "", null, "", "", null);
            return Measurement.run(
                    programme,
                    new MemoryAudio("return", run.sampleRateHz(), heard),
                    session,
                    Capture.of(machine.spec().mode()),
                    List.of());
        }
    }

    private Path programme(String name, Workshop machine) {
        Path place = folder.resolve(name);
        TapeSpeed speed = new TapeSpeed(machine.mmPerS());
        try (OutputFolder out = OutputFolder.open(place, false)) {
            ProgrammeWriter.write(
                    new ProgrammePlan(
                                    speed,
                                    RATE_HZ,
                                    ProgrammePlan.DEFAULT_REFERENCE_DBFS,
                                    !machine.full())
                            .sheet(),
                    out);
            out.commit();
        }
        return place;
    }
}
