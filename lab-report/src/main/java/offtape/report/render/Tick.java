package offtape.report.render;

/**
 * A place on an axis.
 *
 * @param value where it stands, in the unit of the axis
 * @param label what is written there
 */
record Tick(double value, String label) {}
