package offtape.report.apply.correct;

import java.util.List;
import offtape.core.filter.EqualiserBand;

/**
 * The same correction on a parametric equaliser, rounded as it is dialled in.
 *
 * @param bands in order of frequency; those that would do nothing are left out
 * @param trimDb level to turn by as well, so that 1 kHz keeps its level, dB
 * @param worstDb largest difference from the wanted gain, dB
 * @param rmsDb root mean square of the difference, every octave alike, dB
 * @param fromHz lowest frequency of these two figures
 * @param toHz highest frequency of these two figures
 */
public record EqualiserSettings(
        List<EqualiserBand> bands,
        double trimDb,
        double worstDb,
        double rmsDb,
        double fromHz,
        double toHz) {

    private static final double UNITY_HZ = 1000;

    /** Copies the list. */
    public EqualiserSettings {
        bands = List.copyOf(bands);
    }

    /** Gain of bands together re 1 kHz, dB. */
    static double gainDb(List<EqualiserBand> bands, double hz) {
        return sum(bands, hz) - sum(bands, UNITY_HZ);
    }

    /** Gain in dB at a frequency in hertz, the trim included. */
    public double gainDb(double hz) {
        return sum(bands, hz) + trimDb;
    }

    static double sum(List<EqualiserBand> bands, double hz) {
        return bands.stream().mapToDouble(b -> b.gainDb(hz)).sum();
    }
}
