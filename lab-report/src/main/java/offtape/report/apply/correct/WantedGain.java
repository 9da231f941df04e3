package offtape.report.apply.correct;

import java.util.stream.IntStream;

/** The gain that a channel's correction is to have: what the machine leaves out of the target. */
final class WantedGain {

    /**
     * From here down the correction fades out over an octave: nobody is helped by a boost there.
     */
    private static final double BASS_HZ = 30;

    /** From here up, or from where the measured curve ends, it fades out over half an octave. */
    private static final double TOP_HZ = 20_000;

    private static final double BASS_FADE = 2;
    private static final double TOP_FADE = Math.sqrt(2);

    /**
     * A curve that is surer than this counts whole, dB, k = 2; beyond three times it not at all.
     */
    private static final double SURE_DB = 1;

    private WantedGain() {}

    /** The gain over the frequencies of the measured curve and where it fades out beyond. */
    static Curve of(MeasuredCurve measured, Curve target, BoostLimit limit) {
        Curve machine = measured.smoothed();
        double[] hz = measured.hz();
        double[] db =
                IntStream.range(0, hz.length)
                        .mapToDouble(
                                i ->
                                        trust(measured.uncertaintyDb()[i])
                                                * limit.given(target.at(hz[i]) - machine.db()[i]))
                        .toArray();
        return faded(new Curve(hz, db).unityAt1kHz());
    }

    private static double trust(double uncertaintyDb) {
        return Math.max(0, Math.min(1, (3 * SURE_DB - uncertaintyDb) / (2 * SURE_DB)));
    }

    private static Curve faded(Curve gain) {
        double bass = Math.max(BASS_HZ, gain.firstHz());
        double top = Math.min(TOP_HZ, gain.lastHz());
        double[] hz = Grid.over(bass / BASS_FADE, top * TOP_FADE);
        double[] db = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            double below = Math.log(bass / hz[i]) / Math.log(BASS_FADE);
            double above = Math.log(hz[i] / top) / Math.log(TOP_FADE);
            db[i] = gain.at(hz[i]) * half(below) * half(above);
        }
        return new Curve(hz, db).unityAt1kHz();
    }

    /** From 1 at 0 to 0 at 1, without a corner. */
    private static double half(double part) {
        double inside = Math.max(0, Math.min(1, part));
        return 0.5 * (1 + Math.cos(Math.PI * inside));
    }
}
