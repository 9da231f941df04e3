package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Machines at the speed that the wrong mains frequency gives them, with hiss and wow, on the brief
 * programme: every figure within the allowance of the accuracy table.
 */
class FarSpeedTest {

    @TempDir private static Path folder;

    @TestFactory
    Stream<DynamicContainer> everyFigureIsWithinItsAllowance() {
        List<Trial> trials =
                TrialMachines.farOffSpeed().parallelStream()
                        .map(m -> Trial.run(m, folder))
                        .toList();
        return trials.stream()
                .map(
                        t ->
                                DynamicContainer.dynamicContainer(
                                        t.name(), t.errors().stream().map(FarSpeedTest::test)));
    }

    private static DynamicTest test(Trial.FigureError e) {
        return DynamicTest.dynamicTest(
                e.figure(),
                () -> assertTrue(Math.abs(e.error()) <= e.allowance(), () -> e.toString()));
    }
}
