package offtape.core.standard;

/**
 * How far the clock of a sound interface may be from its nominal rate. Whatever is told in hertz or
 * as a speed holds no better than that, since nothing in a recording of a tape shows it.
 */
public final class SampleClock {

    /** As a share, k = 2: 50 ppm, common practice for quartz oscillators, no source. */
    public static final double UNCERTAINTY = 50e-6;

    private SampleClock() {}
}
