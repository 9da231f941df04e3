package offtape.core.realign;

/**
 * What a path does to one channel beside delaying it: its response, and the noise of what comes
 * back, of which some is always there and some is in proportion to the sound (distortion,
 * fluctuation, what the course still misses).
 *
 * @param re real part of the response at each bin
 * @param im imaginary part
 * @param floor power of the noise that is always there
 * @param share power of the rest as a share of the sound's
 * @param coherence squared coherence of original and return
 */
record Transfer(double[] re, double[] im, double[] floor, double[] share, double[] coherence) {

    /** Power of the response at a bin. */
    double power(int k) {
        return re[k] * re[k] + im[k] * im[k];
    }

    /** The same response with a delay taken out. */
    Transfer earlier(double frames, Windows windows) {
        double[] a = new double[re.length];
        double[] b = new double[re.length];
        for (int k = 0; k < re.length; k++) {
            double cos = Math.cos(windows.omega(k) * frames);
            double sin = Math.sin(windows.omega(k) * frames);
            a[k] = re[k] * cos - im[k] * sin;
            b[k] = re[k] * sin + im[k] * cos;
        }
        return new Transfer(a, b, floor, share, coherence);
    }
}
