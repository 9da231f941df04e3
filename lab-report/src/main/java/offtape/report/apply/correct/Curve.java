package offtape.report.apply.correct;

import java.util.Arrays;

/**
 * A level over frequency, straight between its points over the logarithm of frequency and going on
 * beyond them at the level of the first and last.
 *
 * @param hz frequencies, rising, at least one
 * @param db levels, same length
 */
record Curve(double[] hz, double[] db) {

    private static final double UNITY_HZ = 1000;

    /** Level in dB at a frequency in hertz above 0. */
    double at(double frequencyHz) {
        int last = hz.length - 1;
        if (frequencyHz <= hz[0]) {
            return db[0];
        }
        if (frequencyHz >= hz[last]) {
            return db[last];
        }
        int found = Arrays.binarySearch(hz, frequencyHz);
        if (found >= 0) {
            return db[found];
        }
        int i = -found - 2;
        double part = Math.log(frequencyHz / hz[i]) / Math.log(hz[i + 1] / hz[i]);
        return db[i] + part * (db[i + 1] - db[i]);
    }

    /** The same curve moved so that it is 0 dB at 1 kHz. */
    Curve unityAt1kHz() {
        double unity = at(UNITY_HZ);
        return new Curve(hz, Arrays.stream(db).map(x -> x - unity).toArray());
    }

    double firstHz() {
        return hz[0];
    }

    double lastHz() {
        return hz[hz.length - 1];
    }
}
