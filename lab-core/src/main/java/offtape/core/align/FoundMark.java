package offtape.core.align;

/**
 * A mark found in a recording.
 *
 * @param frame where it begins, fractional
 * @param gain its level re what was sent, as a factor; negative if it came back inverted
 * @param likeness share of the sound's energy there that the mark explains, 0 to 1
 */
public record FoundMark(double frame, double gain, double likeness) {}
