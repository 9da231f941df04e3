package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import offtape.core.audio.AudioSource;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;

/** Sets a model against the simulated machine it was fitted to. */
public final class ModelCheck {

    private static final double SMALL_DB = -80;

    private ModelCheck() {}

    /**
     * One comparison.
     *
     * @param parts what machine and model do to the sound
     * @param depth how far the model cancels the machine
     */
    public record Row(Set<ModelPart> parts, NullDepth depth) {}

    /**
     * The null part by part: response alone, with saturation, with crosstalk as well.
     *
     * @param model the model
     * @param spec the machine; its motion and noise are left out
     * @param sound what is sent through both, held in memory
     * @param sentDb by how much hotter it is sent, dB, taken back behind
     */
    public static List<Row> rows(
            MachineModel model, MachineSpec spec, AudioSource sound, double sentDb) {
        List<Row> rows = new ArrayList<>();
        Set<ModelPart> parts = EnumSet.of(ModelPart.RESPONSE);
        rows.add(row(model, spec, sound, sentDb, parts));
        for (ModelPart next : List.of(ModelPart.SATURATION, ModelPart.CROSSTALK)) {
            parts.add(next);
            rows.add(row(model, spec, sound, sentDb, parts));
        }
        return rows;
    }

    private static Row row(
            MachineModel model,
            MachineSpec spec,
            AudioSource sound,
            double sentDb,
            Set<ModelPart> parts) {
        boolean bent = parts.contains(ModelPart.SATURATION);
        // the response is what is left of the machine when the sound is small
        double[][] truth =
                truth(model, QuietMachine.of(spec, parts), sound, bent ? sentDb : SMALL_DB);
        AudioSource made = ModelSound.of(model, sound, sentDb, parts, 1);
        return new Row(
                EnumSet.copyOf(parts), NullDepth.of(truth, made.read(0, (int) sound.frames())));
    }

    static double[][] truth(
            MachineModel model, MachineSpec spec, AudioSource sound, double sentDb) {
        int rate = sound.sampleRateHz();
        // a reference so much lower is the same as a sound so much hotter
        MachineRun run =
                SimulatedMachine.of(spec)
                        .run(rate, sound.frames(), model.referenceDbfs() - sentDb, rate);
        double[][] truth = new double[2][(int) sound.frames()];
        int[] filled = {0};
        run.play(
                sound,
                (block, count) -> {
                    int some = Math.min(count, truth[0].length - filled[0]);
                    for (int c = 0; c < 2 && some > 0; c++) {
                        System.arraycopy(block[c], 0, truth[c], filled[0], some);
                    }
                    filled[0] += Math.max(0, some);
                });
        return truth;
    }
}
