package offtape.core.machine;

/**
 * What is heard at time u was written at the s for which x_write(s) = x_read(u) − lag. A capture
 * mode is nothing but which motion wrote, which one read, and how far apart the heads are.
 *
 * @param write motion that wrote the tape
 * @param read motion that reads it
 * @param lagSeconds distance of the heads in seconds of nominal tape; 0 if the tape was written in
 *     an earlier pass
 */
record CaptureMap(Motion write, Motion read, double lagSeconds) {

    /** No tape at all. */
    static final CaptureMap IDENTITY = new CaptureMap(Motion.PERFECT, Motion.PERFECT, 0);

    /** Programme time heard at machine time u, seconds. */
    double programmeAt(double machineSeconds) {
        return write.timeAt(read.position(machineSeconds) - lagSeconds);
    }

    /** As above, starting the search from a programme time near the answer. */
    double programmeAt(double machineSeconds, double guess) {
        return write.timeAt(read.position(machineSeconds) - lagSeconds, guess);
    }

    /** Machine time at which programme time s is heard, seconds. */
    double machineAt(double programmeSeconds) {
        return read.timeAt(write.position(programmeSeconds) + lagSeconds);
    }

    /** ds/du, the pitch of the return re the programme: v_read(u)/v_write(s). */
    double rate(double machineSeconds, double programmeSeconds) {
        return (1 + read.deviation(machineSeconds)) / (1 + write.deviation(programmeSeconds));
    }
}
