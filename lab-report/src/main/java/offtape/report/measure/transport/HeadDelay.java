package offtape.report.measure.transport;

import offtape.report.result.HealthNote;

/**
 * The time from record to replay head, as far as it is known.
 *
 * @param seconds the time
 * @param sigmaSeconds its standard uncertainty
 * @param found how it is known, a plain sentence
 * @param note what the reader should know of it, or null
 */
public record HeadDelay(double seconds, double sigmaSeconds, String found, HealthNote note) {

    Comb comb() {
        return new Comb(seconds, sigmaSeconds);
    }
}
