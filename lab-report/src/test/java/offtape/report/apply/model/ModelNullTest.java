package offtape.report.apply.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.music.MadeUpMusic;
import offtape.core.music.MadeUpMusic.Kind;
import offtape.core.standard.Iec61260;
import offtape.report.measure.speed.BareTone;
import offtape.report.result.Distortion;
import offtape.report.result.NoiseSpectrum;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Models fitted to machines with their noise and motion, against the same machines without, on
 * music that was not in the programme. It is sent so that its peak is where K3 of 1 kHz is 1 %.
 */
class ModelNullTest {

    private static final double BAR_DB = -35;
    private static final double MUSIC_S = 3;

    @TempDir private Path folder;

    /** The one whose phases are hardest to find: steep edge, losses, hiss. */
    @Test
    void cancelsACassette() throws Exception {
        ModelMachines.Machine machine = ModelMachines.cassette();
        Results results = readBack(ModelBench.measured(machine, true, folder));
        MachineModel model = ModelFit.of(results);
        assertTrue(model.notes().isEmpty(), () -> model.notes().toString());
        check(machine, results, model, List.of(Kind.MIX));
        checkHiss(results, model);
        checkMotion(results, model);
    }

    /** The spread of the table in DEVELOPERS.md. */
    @Test
    @Tag("study")
    void cancelsAllMachines() throws Exception {
        for (ModelMachines.Machine machine : ModelMachines.all()) {
            for (boolean brief : new boolean[] {true, false}) {
                Path place = folder.resolve(brief ? "short" : "whole");
                Results results = readBack(ModelBench.measured(machine, brief, place));
                MachineModel model = ModelFit.of(results);
                System.out.println(machine.name() + (brief ? ", short" : ", whole"));
                check(machine, results, model, List.of(Kind.values()));
                checkMotion(results, model);
                checkHiss(results, model);
            }
        }
    }

    /** A session as users have it: what the file holds and nothing else. */
    private Results readBack(Results results) throws Exception {
        Path file = folder.resolve("results.json");
        java.nio.file.Files.writeString(file, ResultsJson.write(results));
        return ResultsReader.read(file);
    }

    private static void check(
            ModelMachines.Machine machine, Results results, MachineModel model, List<Kind> kinds) {
        double onePercentDb =
                results.distortion().stream()
                        .filter(d -> d.frequencyHz() < 2000)
                        .map(Distortion::levelAtK3OnePercent)
                        .filter(q -> q.isKnown())
                        .mapToDouble(q -> q.value())
                        .min()
                        .orElseThrow();
        for (Kind kind : kinds) {
            double[][] x =
                    MadeUpMusic.of(kind, machine.rateHz(), MUSIC_S, 11)
                            .read(0, (int) (MUSIC_S * machine.rateHz()));
            AudioSource music = new MemoryAudio("music", machine.rateHz(), x);
            double sentDb = model.referenceDbfs() + onePercentDb - 20 * Math.log10(peak(x));
            List<ModelCheck.Row> rows =
                    ModelCheck.rows(model, machine.draft().spec(), music, sentDb);
            System.out.printf(
                    Locale.ROOT,
                    "  %-6s response %.1f, + saturation %.1f, + crosstalk %.1f dB%n",
                    kind,
                    rows.get(0).depth().db(),
                    rows.get(1).depth().db(),
                    rows.get(2).depth().db());
            for (ModelCheck.Row row : rows) {
                assertTrue(row.depth().db() < BAR_DB, () -> machine.name() + " " + kind + row);
            }
        }
    }

    private static double peak(double[][] x) {
        double peak = 0;
        for (double[] channel : x) {
            for (double v : channel) {
                peak = Math.max(peak, Math.abs(v));
            }
        }
        return peak;
    }

    /**
     * Hiss of 10 s in third-octave bands against the session's. Bands from 500 Hz have more than
     * 100 Hz · 10 s · 2 = 2300 degrees of freedom and so scatter by 0.13 dB, the session's silence
     * of 4 s by 0.2 dB.
     */
    private static void checkHiss(Results results, MachineModel model) {
        int rate = 48_000;
        int frames = 10 * rate;
        AudioSource nothing = new MemoryAudio("nothing", rate, new double[2][frames]);
        double[][] y = ModelSound.of(model, nothing, 0, Set.of(ModelPart.NOISE), 4).read(0, frames);
        double worst = 0;
        for (int c = 0; c < 2; c++) {
            NoiseSpectrum told = results.noise().get(c).spectrum();
            double reference =
                    Math.pow(10, (model.referenceDbfs() + model.channels()[c].referenceDb()) / 10)
                            / 2;
            for (int i = 0; i < told.frequencyHz().length; i++) {
                double hz = told.frequencyHz()[i];
                if (hz >= 500 && hz < 16_000) {
                    double power =
                            Bands.power(
                                    y[c],
                                    rate,
                                    Iec61260.lowerEdgeHz(hz, 3),
                                    Iec61260.upperEdgeHz(hz, 3));
                    double off = 10 * Math.log10(power / reference) - told.levelDb()[i];
                    worst = Math.max(worst, Math.abs(off));
                }
            }
        }
        System.out.printf(Locale.ROOT, "  hiss within %.2f dB%n", worst);
        assertEquals(0, worst, 0.6);
    }

    /** A tone through the preview reads as the session's did; random motion scatters. */
    private static void checkMotion(Results results, MachineModel model) {
        int rate = 48_000;
        int frames = 24 * rate;
        double[] tone = new double[frames];
        for (int i = 0; i < frames; i++) {
            tone[i] = 0.1 * Math.sin(2 * Math.PI * 3150.0 * i / rate);
        }
        AudioSource steady = new MemoryAudio("tone", rate, tone);
        double[][] y = ModelSound.of(model, steady, 0, Set.of(ModelPart.MOTION), 2).read(0, frames);
        Speed heard = BareTone.at(new MemoryAudio("tone", rate, y), 0, 24, 3150, 3150);
        Speed told = results.speed();
        System.out.printf(
                Locale.ROOT,
                "  weighted peak %.4f of %.4f, unweighted rms %.4f of %.4f %%%n",
                heard.weightedPeak().value(),
                told.weightedPeak().value(),
                heard.unweightedRms().value(),
                told.unweightedRms().value());
        assertEquals(1, heard.weightedRms().value() / told.weightedRms().value(), 0.15);
        assertEquals(1, heard.unweightedRms().value() / told.unweightedRms().value(), 0.15);
    }
}
