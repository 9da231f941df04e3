package offtape.report.locate;

/**
 * A moment of the programme found in the recording.
 *
 * @param programmeSeconds time in the programme
 * @param recordingSeconds time in the recording
 * @param signs for each channel +1 if it came back upright, −1 if inverted, 0 if it was not heard
 * @param likeness correlation coefficient of the louder channel, 0 to 1
 */
record Anchor(double programmeSeconds, double recordingSeconds, int[] signs, double likeness) {}
