package offtape.cli.lineup;

/**
 * What was asked for last, and whether it is what returns now. Frames of playing and of recording
 * are counted from the first; a stream's two directions run at one rate, so a lag in frames stays.
 */
final class Flow {

    /** A return that has not been timed is believed to be here after this long. */
    private static final double UNKNOWN_S = 1.0;

    /** Room for a machine that was switched to a longer way since it was timed. */
    private static final double ROOM_S = 0.3;

    private final Generator generator;
    private final int sampleRateHz;
    private final double[] manyTones;
    private final double[] mark;
    private long number;
    private Sent sent = Sent.nothing(0);
    private boolean hasSounded;
    private long beganAfter;
    private Double lagFrames;

    Flow(Generator generator, int sampleRateHz) {
        this.generator = generator;
        this.sampleRateHz = sampleRateHz;
        this.manyTones = ManyTones.table(sampleRateHz);
        this.mark = Mark.samples(sampleRateHz);
    }

    /** Playing began when so many frames had been recorded. */
    void playingBegan(long recordedFrames) {
        beganAfter = recordedFrames;
    }

    /** Frames that had been recorded when playing began. */
    long beganAfter() {
        return beganAfter;
    }

    double[] mark() {
        return mark;
    }

    /** Asks for what a desk is set to. */
    void send(Desk desk) {
        ask(desk.sent(++number, manyTones));
    }

    /** Asks for silence. */
    void sendNothing() {
        ask(Sent.nothing(++number));
    }

    /** Asks for a mark of a peak in full-scale units. */
    void sendMark(double peak) {
        ask(Sent.once(++number, mark, peak));
    }

    // before anything was sent nothing can be on its way
    private double untimed() {
        return hasSounded ? UNKNOWN_S : 0;
    }

    private void ask(Sent next) {
        hasSounded |= next.kind() != Sent.Kind.NOTHING;
        sent = next;
        generator.send(next);
    }

    /** Recorded frame less played frame of one sound, as the last mark told. */
    void timed(double lag) {
        lagFrames = lag;
    }

    /** The played frame at which what was asked for began, once it is settled; else −1. */
    long began() {
        return generator.settledAt(sent) < 0 ? -1 : generator.beganAt();
    }

    /** Whether what was asked for is sent as it is meant to be. */
    boolean isSettled() {
        return generator.settledAt(sent) >= 0;
    }

    /**
     * Whether the last seconds of what was recorded are wholly the return of what was asked for.
     */
    boolean isHeard(long recorded, double seconds) {
        long settled = generator.settledAt(sent);
        if (settled < 0) {
            return false;
        }
        double lag = lagFrames == null ? beganAfter + untimed() * sampleRateHz : lagFrames;
        return recorded >= settled + lag + (ROOM_S + seconds) * sampleRateHz;
    }
}
