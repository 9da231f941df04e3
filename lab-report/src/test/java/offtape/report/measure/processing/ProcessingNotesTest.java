package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import offtape.core.dsp.PowerDensity;
import offtape.core.unit.Quantity;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;

/** A return that shows everything at once. */
class ProcessingNotesTest {

    private static final double[] HZ = {30, 500, 1000, 2000, 4000, 8000, 9000, 15_000, 17_000};

    private static Response sweep(LevelDependence change) {
        Quantity no = Quantity.unknown("Not asked for.");
        double[] db = {0, 0, 4, 0, 0, 0, 0, 0, 0};
        return new Response(
                "left",
                -20,
                HZ,
                db,
                new double[9],
                no,
                no,
                no,
                0,
                0,
                List.of(),
                List.of(),
                change,
                List.of());
    }

    private static Distortion limited() {
        Ladders ladder = new Ladders();
        for (int i = 0; i < 6; i++) {
            ladder.quiet(-20 + 4 * i, -i, 0.0, 0.0);
        }
        return ladder.at(1000);
    }

    private static Distortion lifted() {
        Ladders ladder = new Ladders();
        for (int i = 0; i < 6; i++) {
            ladder.quiet(-20 + 6 * i, -1.5 * i, 0.0, 0.0);
        }
        return ladder.at(10_000);
    }

    /** Noise that ends at 10.5 kHz: lines each 47 Hz, the last of them the 900th of 11.7 Hz. */
    private static NoiseDensities steep() {
        int frames = 4096;
        double[] x = new double[frames];
        Random random = new Random(4);
        for (int bin = 4; bin < 900; bin += 4) {
            double phase = 2 * Math.PI * random.nextDouble();
            for (int i = 0; i < frames; i++) {
                x[i] += 1e-3 * Math.sin(2 * Math.PI * bin * i / frames + phase);
            }
        }
        PowerDensity density = PowerDensity.of(x, 48_000, frames);
        return new NoiseDensities(new double[1][0], new PowerDensity[] {density});
    }

    @Test
    void allIsToldInTheOrderOfNoiseLaddersAndSweeps() {
        Quantity no = Quantity.unknown("Not asked for.");
        double[] more = {0, 0, 0, 0, 4, 4, 4, 4, 0};
        LevelDependence change = new LevelDependence(-40, HZ, more, new double[9], no, no);
        List<HealthNote> notes =
                ProcessingNotes.of(
                        List.of(limited(), lifted()),
                        List.of(sweep(null), sweep(change)),
                        steep(),
                        48_000,
                        OptionalDouble.of(190.5));
        assertEquals(
                List.of(
                        "band-ends",
                        "gain-follows-level",
                        "noise-reduction",
                        "middle-not-of-tape",
                        "noise-reduction"),
                notes.stream().map(HealthNote::code).toList());
    }
}
