package offtape.core.music;

/** One sound of a piece, such as a note or a stroke. */
interface Sounding {

    /** When it begins, seconds from the start of the piece. */
    double beginSeconds();

    /** How long it is heard, seconds. */
    double seconds();

    /** Where it stands between left (0) and right (1). */
    double place();

    /** Its value so long after its beginning, seconds from 0 to {@link #seconds()}. */
    double at(double seconds);

    /** Adds its share of a stretch of two channels. */
    default void add(double[][] block, long startFrame, int rateHz) {
        long first = Math.max(startFrame, (long) Math.ceil(beginSeconds() * rateHz));
        long end = (long) Math.ceil((beginSeconds() + seconds()) * rateHz);
        long last = Math.min(startFrame + block[0].length, end);
        double left = Math.sqrt(1 - place());
        double right = Math.sqrt(place());
        for (long frame = first; frame < last; frame++) {
            double value = at((double) frame / rateHz - beginSeconds());
            int i = (int) (frame - startFrame);
            block[0][i] += left * value;
            block[1][i] += right * value;
        }
    }
}
