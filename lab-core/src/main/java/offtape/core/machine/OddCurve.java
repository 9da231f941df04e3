package offtape.core.machine;

/** A saturation curve of odd symmetry and slope 1 at zero. */
@FunctionalInterface
interface OddCurve {

    /** Magnetisation for a field, both in full-scale units of the programme. */
    double of(double x);
}
