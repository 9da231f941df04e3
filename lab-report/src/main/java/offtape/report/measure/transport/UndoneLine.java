package offtape.report.measure.transport;

import offtape.report.measure.line.FoundLine;

/**
 * A line of the return and what the transport must do to make it.
 *
 * @param heard as found in the return
 * @param cos factor of the cosine of its turns in the transport's own deviation, percent
 * @param sin factor of the sine, percent
 * @param gain how many times as large it is heard, 2·|sin(π·f·τ)|; of a moving line on average
 */
record UndoneLine(FoundLine heard, double cos, double sin, double gain) {

    /** Peak of the transport's own line, percent. */
    double peak() {
        return Math.hypot(cos, sin);
    }

    /** Its expanded uncertainty, percent: the fit, and the gain for what is known of τ and rate. */
    double peakUncertainty(Comb comb) {
        double fit = heard.peakUncertainty() / gain;
        double turn = Math.PI * heard.middleHz() * comb.seconds();
        double slope = 2 * Math.PI * Math.abs(Math.cos(turn)) / gain;
        double delay = 2 * slope * heard.middleHz() * comb.sigmaSeconds();
        double rate = slope * comb.seconds() * heard.hzUncertainty();
        return Math.hypot(fit, peak() * Math.hypot(delay, rate));
    }
}
