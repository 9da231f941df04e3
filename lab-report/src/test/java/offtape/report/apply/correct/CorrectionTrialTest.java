package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import offtape.core.machine.spec.MachineSpec;
import offtape.report.measure.MachineDraft;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Corrections tried on simulated machines: the return keeps within 0.5 dB of the target wherever
 * the correction says that it will, and the hiss after the tape is what was said, within 0.3 dB.
 */
class CorrectionTrialTest {

    private static final double TARGET_DB = 0.5;
    private static final double NOISE_DB = 0.3;

    /** Even a machine of little bass is put right from here. */
    private static final double LOWEST_HZ = 60;

    private static final CorrectionWish WISH =
            new CorrectionWish(null, List.of(8000), 12, 12, 1, false, List.of());

    @TempDir private Path folder;

    /**
     * Both channels off by much, and by different amounts: one wears, both are wrongly equalised.
     */
    private static MachineDraft ordinary() {
        return MachineDraft.ordinary()
                .with("heads.spacingLossMicrometres", 1.4)
                .with("transport.components", "[{\"frequencyHz\": 4, \"peakPercent\": 0.15}]")
                .with(
                        "electronics.equalisation",
                        "{\"tapeMicroseconds\": 90, \"replayMicroseconds\": 70}");
    }

    @Test
    void theReturnIsFlatAndTheHissIsWhatWasSaid() {
        check("ordinary", ordinary().spec(), false, 15_000);
    }

    @TestFactory
    @Tag("study")
    Stream<DynamicTest> soItIsOnMachinesOfAllKinds() {
        return Stream.of(
                study("ordinary", ordinary()),
                study("sound", MachineDraft.ordinary()),
                study("dirty", ordinary().with("heads.spacingLossMicrometres", 4)),
                study("wide gap", ordinary().with("heads.gapMicrometres", 7)),
                study("tilted", ordinary().with("heads.azimuthArcMinutes", 14)),
                study(
                        "strong contour",
                        ordinary()
                                .with(
                                        "heads.bumps",
                                        "[{\"frequencyHz\": 55, \"gainDb\": 4, \"q\": 1.6},"
                                                + " {\"frequencyHz\": 110, \"gainDb\": -3, \"q\": 2}]")),
                study(
                        "too bright",
                        ordinary()
                                .with("heads.spacingLossMicrometres", 0.2)
                                .with(
                                        "electronics.equalisation",
                                        "{\"tapeMicroseconds\": 50, \"replayMicroseconds\": 120}")),
                study("early edge", ordinary().with("electronics.upperEdgeHz", 11_000)),
                study("thin", ordinary().with("electronics.lowerEdgeHz", 90)),
                study(
                        "random flutter",
                        ordinary()
                                .with(
                                        "transport.randomFlutter",
                                        "{\"rmsPercent\": 0.2, \"lowHz\": 0.5, \"highHz\": 120}")),
                study(
                        "unlike channels",
                        ordinary()
                                .with(
                                        "electronics.right",
                                        "{\"recordGainDb\": -2, \"upperEdgeHz\": 9000,"
                                                + " \"lowerEdgeHz\": 60}")));
    }

    private DynamicTest study(String name, MachineDraft draft) {
        return DynamicTest.dynamicTest(name, () -> check(name, draft.spec(), true, 0));
    }

    /**
     * Checks a machine.
     *
     * @param whole whether with ladders and a speed tone
     * @param toHz no lower than here they end
     */
    private void check(String name, MachineSpec spec, boolean whole, double toHz) {
        Path place = folder.resolve(name.replace(' ', '-'));
        Correction c = TriedMachine.of(spec, whole, place).tried(WISH);
        assertEquals(2, c.verification().channels().size());
        for (Verification.Channel v : c.verification().channels()) {
            double noise = v.noiseMeasured().value() - v.noisePredicted().value();
            double flat = v.unweightedMeasured().value() - v.unweightedPredicted().value();
            String line =
                    String.format(
                            Locale.ROOT,
                            "%-16s %-5s %.0f to %.0f Hz: %.2f dB at most, at %.0f Hz, %.2f dB rms; after"
                                    + " tape %.2f dB; hiss %+.2f dB said, off by %+.2f dB A, %+.2f dB flat",
                            name,
                            v.channel(),
                            v.fromHz(),
                            v.toHz(),
                            v.worstDb(),
                            v.worstHz(),
                            v.rmsDb(),
                            v.worstAfterTapeDb(),
                            v.noisePredicted().value(),
                            noise,
                            flat);
            System.out.println(line);
            assertTrue(v.worstDb() <= TARGET_DB, line);
            assertTrue(v.worstAfterTapeDb() <= TARGET_DB, line);
            assertTrue(Math.abs(noise) <= NOISE_DB && Math.abs(flat) <= NOISE_DB, line);
            assertTrue(v.toHz() >= toHz && v.fromHz() <= LOWEST_HZ, line);
        }
    }
}
