package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.output.OutputFolder;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeWriter;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A thousand measures in one process, each into the same folder with all that the command writes:
 * nothing of one stays behind in memory, threads, classes or open files.
 */
class ManyMeasuresTest {

    private static final int COUNT = Integer.getInteger("offtape.measures", 1000);
    private static final int RATE = 48_000;

    /** What 900 measures may add: a leak of 600 bytes a measure is more. */
    private static final long ALLOWED_BYTES = 512 << 10;

    @TempDir private Path folder;

    /** What a process holds. */
    private record State(int measures, long heapBytes, int threads, int classes, long files) {

        static State after(int measures) throws IOException {
            // the second time for what the first has put up for cleaning
            for (int i = 0; i < 3; i++) {
                System.gc();
            }
            return new State(
                    measures,
                    ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed(),
                    ManagementFactory.getThreadMXBean().getThreadCount(),
                    ManagementFactory.getClassLoadingMXBean().getLoadedClassCount(),
                    openFiles());
        }

        private static long openFiles() throws IOException {
            Path own = Path.of("/proc/self/fd");
            if (!Files.isDirectory(own)) {
                return 0;
            }
            try (Stream<Path> all = Files.list(own)) {
                return all.count();
            }
        }
    }

    private static Cue.Tone tone(String id, double from, double seconds, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, at(from), at(seconds), hz, 0);
    }

    private static long at(double seconds) {
        return Math.round(seconds * RATE);
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at(0.1), at(0.4)));
        cues.add(tone("reference", 0.7, 0.6, 1000));
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at(1.5), at(0.8)));
        cues.add(new Cue.Sweep("sweep-low", ChannelSet.BOTH, at(2.5), at(2), 20, 20_000, -20));
        List<Cue.Step> steps = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            steps.add(new Cue.Step(at(4.7 + 0.4 * i), at(0.3), 4.0 * i));
        }
        cues.add(new Cue.Ladder("ladder", ChannelSet.BOTH, at(4.7), at(1.5), 1000, steps));
        cues.add(tone("speed", 6.4, 2, 3150));
        return new CueSheet(RATE, at(8.6), -18, 190.5, cues);
    }

    @Test
    @Tag("study")
    void nothingGrows() throws IOException {
        Path programme = folder.resolve("programme");
        try (OutputFolder out = OutputFolder.open(programme, false)) {
            ProgrammeWriter.write(sheet(), out);
            out.commit();
        }
        Path session = folder.resolve("session");
        Object[] line = {
            "measure",
            programme.resolve("programme.wav"),
            "--programme",
            programme,
            "--mode",
            "reference-tape",
            "--out",
            session,
            "--quiet"
        };
        byte[] first = null;
        State early = null;
        for (int n = 1; n <= COUNT; n++) {
            Tool.Outcome outcome = Tool.run(line);
            assertEquals(0, outcome.code(), outcome.err());
            byte[] results = Files.readAllBytes(session.resolve("results.json"));
            first = first == null ? results : first;
            assertArrayEquals(first, results, "results of measure " + n);
            if (n == COUNT / 10) {
                early = State.after(n);
                System.out.println(early);
            }
        }
        State late = State.after(COUNT);
        System.out.println(late);
        long grown = late.heapBytes() - early.heapBytes();
        assertTrue(grown < ALLOWED_BYTES, grown + " bytes more than after " + early.measures());
        assertEquals(early.threads(), late.threads(), "threads");
        assertEquals(early.files(), late.files(), "open files");
        // Java loads some more when it compiles what turned out to run often; a leak would be one
        // a measure
        int classes = late.classes() - early.classes();
        assertTrue(classes < COUNT / 10, late + " after " + early);
    }
}
