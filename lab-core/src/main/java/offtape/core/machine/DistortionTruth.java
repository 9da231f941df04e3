package offtape.core.machine;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Distortion of a steady tone on one channel, as it is in the return: emphasis and response
 * included. Levels of the return are re the returned reference tone (1 kHz at 0 dB).
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz frequency of the tone
 * @param steps a step a decibel of record level, −20 to +18 dB
 * @param levelAtK3OnePercent record level with K3 = 1 %, dB, or null if there is none to +30 dB or
 *     the third harmonic lies beyond the band
 * @param levelAtK3ThreePercent the same for 3 %
 * @param levelAtCompressionOneDb record level with 1 dB of compression, dB, or null
 * @param maximumOutputLevel replay level at K3 = 3 %, dB, or null
 */
public record DistortionTruth(
        String channel,
        double frequencyHz,
        List<Step> steps,
        Double levelAtK3OnePercent,
        Double levelAtK3ThreePercent,
        Double levelAtCompressionOneDb,
        Double maximumOutputLevel) {

    private static final int LOWEST_DB = -20;
    private static final int HIGHEST_DB = 18;
    private static final double SEARCH_FROM_DB = -60;
    private static final double SEARCH_TO_DB = 30;

    static DistortionTruth of(String channel, SteadyTone tone, double frequencyHz) {
        List<Step> steps =
                IntStream.rangeClosed(LOWEST_DB, HIGHEST_DB)
                        .mapToObj(level -> Step.of(tone, frequencyHz, level))
                        .toList();
        Double three = levelAt(tone, l -> tone.harmonicPercent(3, frequencyHz, l) - 3);
        return new DistortionTruth(
                channel,
                frequencyHz,
                steps,
                levelAt(tone, l -> tone.harmonicPercent(3, frequencyHz, l) - 1),
                three,
                levelAt(tone, l -> tone.compressionDb(frequencyHz, l) - 1),
                three == null ? null : tone.levelDb(tone.peak(1, frequencyHz, three)));
    }

    private static Double levelAt(SteadyTone tone, DoubleUnaryOperator excess) {
        return tone.saturates() ? Crossing.between(excess, SEARCH_FROM_DB, SEARCH_TO_DB) : null;
    }

    /**
     * The tone at one level.
     *
     * @param recordLevelDb level in the programme, dB re reference
     * @param replayLevelDb level of the fundamental in the return, dB
     * @param k2Percent second harmonic re fundamental; 0 beyond the band
     * @param k3Percent third harmonic re fundamental; 0 beyond the band
     * @param compressionDb how far the fundamental lies under its small-signal line
     */
    public record Step(
            double recordLevelDb,
            double replayLevelDb,
            double k2Percent,
            double k3Percent,
            double compressionDb) {

        private static Step of(SteadyTone tone, double frequencyHz, double levelDb) {
            return new Step(
                    levelDb,
                    tone.levelDb(tone.peak(1, frequencyHz, levelDb)),
                    tone.harmonicPercent(2, frequencyHz, levelDb),
                    tone.harmonicPercent(3, frequencyHz, levelDb),
                    tone.compressionDb(frequencyHz, levelDb));
        }
    }
}
