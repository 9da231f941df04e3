package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * How a louder sweep comes back differently from a quiet one: tape that saturates loses its highs
 * first.
 *
 * @param quietLevelDb level of the sweep compared with, dB re reference
 * @param frequencyHz frequencies of the programme, rising
 * @param differenceDb loud response less quiet response, both 0 dB at 1 kHz, same length
 * @param uncertaintyDb expanded uncertainty (k = 2) of each difference, same length
 * @param lossAt10kHz dB, how much less of 10 kHz comes back of the louder sweep
 * @param oneDbLossFrom Hz, lowest frequency above 1 kHz at which that loss reaches 1 dB
 */
public record LevelDependence(
        double quietLevelDb,
        double[] frequencyHz,
        double[] differenceDb,
        double[] uncertaintyDb,
        Quantity lossAt10kHz,
        Quantity oneDbLossFrom) {

    /** Checks that the lists belong together. */
    public LevelDependence {
        Columns.requireEven(frequencyHz, differenceDb, uncertaintyDb);
    }
}
