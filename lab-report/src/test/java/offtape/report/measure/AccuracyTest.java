package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The accuracy that every figure must reach, on simulated machines whose truth is known: the whole
 * way from a programme on disk through the machine to results. Prints the error beside the
 * allowance; allowances are those of the project's accuracy table for returns with hiss of −58 dB
 * and wow and flutter up to 0.3 %, and for clean ones.
 */
class AccuracyTest {

    /** So many machines have to be tried. */
    private static final int FEWEST = 40;

    @TempDir private static Path folder;

    @TestFactory
    @Tag("study")
    Stream<DynamicContainer> everyFigureIsWithinItsAllowance() {
        List<TrialMachines.Machine> machines = TrialMachines.all();
        assertTrue(machines.size() >= FEWEST, machines.size() + " machines");
        return trials(machines);
    }

    /**
     * Each fifth machine, for every build: clean, with wow, a recorded motion, far off and drawn.
     */
    @TestFactory
    Stream<DynamicContainer> everyFigureOfAFewMachinesIsWithinItsAllowance() {
        List<TrialMachines.Machine> machines = TrialMachines.all();
        return trials(
                IntStream.range(0, machines.size())
                        .filter(i -> i % 5 == 3)
                        .mapToObj(machines::get)
                        .toList());
    }

    private static Stream<DynamicContainer> trials(List<TrialMachines.Machine> machines) {
        List<CompletableFuture<Trial>> trials =
                machines.stream()
                        .map(m -> CompletableFuture.supplyAsync(() -> Trial.run(m, folder)))
                        .toList();
        return IntStream.range(0, machines.size())
                .mapToObj(i -> container(machines.get(i).name(), trials.get(i)));
    }

    /** A machine that could not be measured at all fails by itself and hides no other. */
    private static DynamicContainer container(String machine, CompletableFuture<Trial> trial) {
        try {
            return DynamicContainer.dynamicContainer(
                    machine, trial.join().errors().stream().map(AccuracyTest::test));
        } catch (CompletionException e) {
            return DynamicContainer.dynamicContainer(
                    machine,
                    List.of(
                            DynamicTest.dynamicTest(
                                    "is measured", () -> fail(machine + ": " + e.getCause()))));
        }
    }

    private static DynamicTest test(Trial.FigureError e) {
        return DynamicTest.dynamicTest(
                e.figure(),
                () -> {
                    System.out.println(line(e));
                    assertTrue(Math.abs(e.error()) <= e.allowance(), () -> line(e));
                });
    }

    private static String line(Trial.FigureError e) {
        return String.format(
                Locale.ROOT,
                "%-34s %-38s error %+10.5f  allowed %8.5f %s",
                e.machine(),
                e.figure(),
                e.error(),
                e.allowance(),
                e.unit());
    }
}
