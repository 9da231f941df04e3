package offtape.report.measure.tone;

/** A complex number. */
public record Complex(double re, double im) {

    public static final Complex ZERO = new Complex(0, 0);

    /** The number of a size and a phase in radians; a negative size turns it half a turn. */
    public static Complex polar(double size, double phase) {
        return new Complex(size * Math.cos(phase), size * Math.sin(phase));
    }

    public Complex times(Complex o) {
        return new Complex(re * o.re - im * o.im, re * o.im + im * o.re);
    }

    public Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    public Complex plus(Complex o) {
        return new Complex(re + o.re, im + o.im);
    }

    public Complex minus(Complex o) {
        return plus(o.times(-1));
    }

    /** This over another that is not zero. */
    public Complex over(Complex o) {
        return times(o.conjugate()).times(1 / (o.re * o.re + o.im * o.im));
    }

    public Complex conjugate() {
        return new Complex(re, -im);
    }

    public double size() {
        return Math.hypot(re, im);
    }

    /** Phase in radians, −π to π. */
    public double phase() {
        return Math.atan2(im, re);
    }
}
