package offtape.cli.lineup;

/** A way from what is sent to what returns, one frame at a time. */
interface Path {

    /** Left and right as they return, of left and right as they were sent. */
    double[] of(double left, double right);
}
