package offtape.core.align;

/**
 * A mark found in a recording.
 *
 * @param frame where its middle lies, fractional
 * @param rate how fast it came back as a factor, above 1 if fast
 * @param gain its level re what was sent, as a factor, without its sign
 * @param likeness share of the sound's energy there that the mark explains, 0 to 1
 * @param doubtFrames standard uncertainty of the place from what the mark does not explain
 * @param doubtOfGain standard uncertainty of the gain as a share of it, likewise
 */
record FoundMark(
        double frame,
        double rate,
        double gain,
        double likeness,
        double doubtFrames,
        double doubtOfGain) {}
