package offtape.cli.lineup;

/**
 * The highest sample of one channel lately.
 *
 * @param dbfs dB re full scale; −200 at the least
 * @param clipped whether full scale was reached within the last seconds
 */
public record Peak(double dbfs, boolean clipped) {}
