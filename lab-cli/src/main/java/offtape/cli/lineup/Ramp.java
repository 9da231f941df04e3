package offtape.cli.lineup;

/** A gain that moves to where it is wanted along half a cosine, so that nothing clicks. */
final class Ramp {

    private final int frames;
    private double from;
    private double to;
    private int done;

    /** At 0; each move takes so many frames. */
    Ramp(int frames) {
        this.frames = frames;
        this.done = frames;
    }

    /** From now on moves to a gain. */
    void moveTo(double gain) {
        if (gain != to) {
            from = value();
            to = gain;
            done = 0;
        }
    }

    /** Is at a gain at once. */
    void setTo(double gain) {
        to = gain;
        done = frames;
    }

    private double value() {
        if (done >= frames) {
            return to;
        }
        return from + (to - from) * (0.5 - 0.5 * Math.cos(Math.PI * done / frames));
    }

    /** The gain of the next frame. */
    double next() {
        double value = value();
        if (done < frames) {
            done++;
        }
        return value;
    }

    boolean isDone() {
        return done >= frames;
    }

    /** Whether it rests at 0. */
    boolean isSilent() {
        return isDone() && to == 0;
    }
}
