package offtape.cli.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.RefusedOutputException;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.DiskTrouble;
import offtape.core.output.OutputFile;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;

/** Writes the return of a simulated machine and its truth. */
final class Simulation {

    private static final Sentences SAID = Sentences.near(Simulation.class);

    private static final double MOTION_ROWS_PER_SECOND = 200;

    private Simulation() {}

    /** Name of the truth beside a return. */
    static String truthName(Path file) {
        return stem(file) + ".truth.json";
    }

    private static final BroadcastNote NOTE =
            BroadcastNote.of("Return of a test programme from a simulated machine");

    /** Name of the motion beside a return. */
    static String motionName(Path file) {
        return stem(file) + ".motion.csv";
    }

    private static String stem(Path file) {
        String name = file.getFileName().toString();
        return name.endsWith(".wav") ? name.substring(0, name.length() - 4) : name;
    }

    /** Plays the programme and writes all three files; the file's owner commits them. */
    static void run(Programme programme, MachineSpec spec, OutputFile file) {
        MachineRun run = SimulatedMachine.of(spec).run(programme.sheet());
        boolean beyondFullScale = spec.recorder().clipDbfs() > 0;
        WavEncoding encoding = beyondFullScale ? WavEncoding.FLOAT_32 : WavEncoding.PCM_24;
        WavFormat format = new WavFormat(run.sampleRateHz(), 2, encoding);
        try (WavWriter wav = WavWriter.create(file.path(), format, NOTE)) {
            run.play(programme.audio(), (block, count) -> wav.write(first(block, count)));
        }
        Path target = file.file();
        try {
            Files.writeString(file.companion(truthName(target)), run.truth().toJson());
            try (Writer motion = Files.newBufferedWriter(file.companion(motionName(target)))) {
                run.timeMap().writeCsv(motion, MOTION_ROWS_PER_SECOND);
            }
        } catch (IOException e) {
            throw new RefusedOutputException(
                    SAID.say("truth-not-written", target, DiskTrouble.words(e)), e);
        }
    }

    private static double[][] first(double[][] block, int count) {
        return block[0].length == count
                ? block
                : Arrays.stream(block).map(x -> Arrays.copyOf(x, count)).toArray(double[][]::new);
    }
}
