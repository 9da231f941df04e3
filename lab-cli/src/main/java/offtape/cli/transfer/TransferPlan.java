package offtape.cli.transfer;

import offtape.cli.sound.LevelCeiling;

/**
 * How stems are sent.
 *
 * @param drive by how much they are raised
 * @param preEmphasis filter before the machine, or null
 * @param markPeak peak of the marks before and behind them, full-scale units
 * @param ceiling what no sample may exceed
 * @param tailSeconds how long the machine may be late
 * @param isFloat whether returns are written as 32-bit float
 * @param isTakenRight whether mono stems are taken back from the right channel
 * @param isAgain whether stems that are done are sent again
 */
public record TransferPlan(
        Drive drive,
        PreEmphasis preEmphasis,
        double markPeak,
        LevelCeiling ceiling,
        double tailSeconds,
        boolean isFloat,
        boolean isTakenRight,
        boolean isAgain) {

    /** What of this decides how a stem comes back. */
    TransferSettings settings(Stem stem) {
        return new TransferSettings(
                drive.dbFor(stem.sentPeak()),
                preEmphasis == null ? null : preEmphasis.sha256(),
                isFloat,
                stem.channels() > 1 ? null : isTakenRight ? "right" : "left");
    }
}
