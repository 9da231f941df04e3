package offtape.report.benchmark;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammePlan;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.TapeSpeed;
import offtape.report.locate.Locator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * The full programme of a little over three minutes at 48 kHz and its return from a simulated
 * second-hand machine, both in memory.
 *
 * @param programme what was sent
 * @param recording what came back, two channels
 * @param spec the machine
 */
record SimulatedReturn(Programme programme, MemoryAudio recording, MachineSpec spec) {

    static final int RATE_HZ = 48_000;

    private static final double TAPE_SPEED_MM_PER_S = 190.5;

    /** The same every time: the machine's description holds its seed. */
    static SimulatedReturn make() {
        CueSheet sheet =
                new ProgrammePlan(
                                new TapeSpeed(TAPE_SPEED_MM_PER_S),
                                RATE_HZ,
                                ProgrammePlan.DEFAULT_REFERENCE_DBFS,
                                false)
                        .sheet();
        double[][] sent = new ProgrammeSignal(sheet).read(0, Math.toIntExact(sheet.frames()));
        Programme programme = new Programme(sheet, new MemoryAudio("programme", RATE_HZ, sent));
        MachineSpec spec = MachineSpec.fromJson(resource("machine.json"));
        MachineRun run = SimulatedMachine.of(spec).run(sheet);
        double[][] heard = new double[2][Math.toIntExact(run.frames())];
        int[] filled = {0};
        run.play(
                programme.audio(),
                (block, count) -> {
                    for (int c = 0; c < heard.length; c++) {
                        System.arraycopy(block[c], 0, heard[c], filled[0], count);
                    }
                    filled[0] += count;
                });
        return new SimulatedReturn(programme, new MemoryAudio("return", RATE_HZ, heard), spec);
    }

    /** The programme found in the return. */
    ProgrammeReturn located() {
        return new ProgrammeReturn(programme, recording, Locator.locate(programme, recording));
    }

    /** All figures, of the return as it is given here: in memory or from a file. */
    Results measure(AudioSource from) {
        Session session =
                new Session(
                        "benchmark",
                        null,
                        TAPE_SPEED_MM_PER_S,
                        spec.mode().key(),
                        "2026-01-01T00:00:00Z",
                        null,
                        "benchmark",
                        "0".repeat(64));
        return Measurement.run(programme, from, session, Capture.of(spec.mode()), List.of());
    }

    private static String resource(String name) {
        try (InputStream in = SimulatedReturn.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
