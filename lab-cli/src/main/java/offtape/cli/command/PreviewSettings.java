package offtape.cli.command;

import java.util.Set;
import offtape.report.apply.model.ModelPart;

/**
 * How a file is passed through a model.
 *
 * @param parts what the machine does to it
 * @param levelDb by how much hotter it is sent
 * @param keepLevel whether that stays
 * @param seed which noise and motion
 * @param monoFrom what becomes of a mono file
 * @param isFloat whether float is asked for
 */
record PreviewSettings(
        Set<ModelPart> parts,
        double levelDb,
        boolean keepLevel,
        long seed,
        MonoFrom monoFrom,
        boolean isFloat) {}
