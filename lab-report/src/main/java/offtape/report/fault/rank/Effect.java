package offtape.report.fault.rank;

/**
 * What a fault of some severity does to one session's symptoms.
 *
 * @param shift change of the symptoms that add, as seen through the spread of sound machines
 * @param extra variance that the fault adds to each of these
 * @param place where symptoms of which the largest counts then are; NaN if it leaves them alone
 * @param spread variance about that
 */
record Effect(double[] shift, double[] extra, double[] place, double[] spread) {}
