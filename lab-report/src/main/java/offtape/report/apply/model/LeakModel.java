package offtape.report.apply.model;

/**
 * What one channel hears of the other.
 *
 * @param levelDb re what the hearing channel returns of its own, dB, over frequency
 * @param phase re the return of the channel that sounds, radians, over frequency
 */
record LeakModel(PointCurve levelDb, PointCurve phase) {}
