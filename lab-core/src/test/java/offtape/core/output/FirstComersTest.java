package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several runs at once into a place of which not even the folders above are there. */
class FirstComersTest {

    private static final int RUNS = 3;
    private static final int ROUNDS = 150;

    @TempDir private Path folder;

    /**
     * One run; it leaves only after all have come.
     *
     * @return what it was refused with, or nothing
     */
    private static String run(Path place, CyclicBarrier together) throws Exception {
        together.await();
        try (OutputFolder out = OutputFolder.open(place, false)) {
            together.await();
            out.write("a.txt", new byte[1]);
            return "";
        } catch (RefusedOutputException e) {
            together.await();
            return e.getMessage();
        }
    }

    /** One comes in, and the others are told of it: none stumbles over folders that appear. */
    @Test
    void oneComesInAndTheOthersAreToldSo() throws Exception {
        ExecutorService runs = Executors.newFixedThreadPool(RUNS);
        try {
            for (int round = 0; round < ROUNDS; round++) {
                Path place = folder.resolve("round-" + round + "/deep/er/session");
                CyclicBarrier together = new CyclicBarrier(RUNS);
                List<Future<String>> all = new ArrayList<>();
                for (int i = 0; i < RUNS; i++) {
                    all.add(runs.submit(() -> run(place, together)));
                }
                int within = 0;
                for (Future<String> one : all) {
                    String said = one.get();
                    within += said.isEmpty() ? 1 : 0;
                    assertTrue(said.isEmpty() || said.startsWith("Another run"), said);
                }
                assertEquals(1, within, "round " + round);
                assertFalse(Files.exists(place), "nothing was committed");
            }
        } finally {
            runs.shutdownNow();
        }
    }
}
