package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Arrays;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * What a loopback session holds of the interface for later sessions to take out.
 *
 * @param delay mean delay of the loop, ms
 * @param clockPpm by how much the recording clock is fast re the playing one, ppm, or null
 * @param interchannelDelay µs, positive if the right channel is late
 * @param crosstalkLeftToRight dB at 1 kHz, re the right channel's reference
 * @param crosstalkRightToLeft dB at 1 kHz, re the left channel's reference
 * @param channels those on which the loop was heard
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record InterfaceFigures(
        Quantity delay,
        Double clockPpm,
        Quantity interchannelDelay,
        Quantity crosstalkLeftToRight,
        Quantity crosstalkRightToLeft,
        List<Channel> channels) {

    private static final Sentences SAID = Sentences.near(InterfaceFigures.class);

    private static final double LARGEST = 1e6;

    /** Copies the list so that the figures cannot change. */
    public InterfaceFigures {
        require(
                delay != null
                        && interchannelDelay != null
                        && crosstalkLeftToRight != null
                        && crosstalkRightToLeft != null
                        && channels != null
                        && (clockPpm == null || Math.abs(clockPpm) < LARGEST));
        channels = List.copyOf(channels);
    }

    /**
     * One channel of the loop.
     *
     * @param channel {@code left} or {@code right}
     * @param referenceReturnDbfs level of the returned reference tone, dB re a full-scale sine
     * @param delay mean delay on this channel, ms
     * @param response from the quietest sweep, or null if there was none
     * @param unweighted its noise in the band of such figures, dB re the returned reference tone
     * @param aWeighted the same, A-weighted
     * @param itu468 the same, ITU-R BS.468-4
     * @param noise its noise over frequency, or null if there was no silence
     * @param hum mains lines in it, levels re the returned reference tone
     * @param ladders its distortion against level
     * @param harmonics its distortion over frequency, from the loudest sweep
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Channel(
            String channel,
            Double referenceReturnDbfs,
            Quantity delay,
            Curve response,
            Quantity unweighted,
            Quantity aWeighted,
            Quantity itu468,
            Density noise,
            List<HumLine> hum,
            List<Ladder> ladders,
            List<HarmonicCurve> harmonics) {

        /** Copies the lists so that the channel cannot change. */
        public Channel {
            require(channel != null && delay != null && isLevel(referenceReturnDbfs));
            require(unweighted != null && aWeighted != null && itu468 != null);
            require(hum != null && ladders != null && harmonics != null);
            require(hum.stream().allMatch(h -> isLevel(h.levelDb()) && h.frequencyHz() > 0));
            require(
                    harmonics.stream()
                            .flatMap(h -> h.points().stream())
                            .allMatch(p -> p.frequencyHz() > 0 && isShare(p.percent())));
            hum = List.copyOf(hum);
            ladders = List.copyOf(ladders);
            harmonics = List.copyOf(harmonics);
        }
    }

    /**
     * A complex response.
     *
     * @param frequencyHz frequencies, rising
     * @param magnitudeDb magnitude, 0 dB at 1 kHz, same length
     * @param phaseDegrees phase beside a delay that is the same at all frequencies and on both
     *     channels, same length; positive leads
     * @param uncertaintyDb expanded uncertainty (k = 2) of each magnitude, same length
     */
    public record Curve(
            double[] frequencyHz,
            double[] magnitudeDb,
            double[] phaseDegrees,
            double[] uncertaintyDb) {

        /** Checks that the curve is one. */
        public Curve {
            require(isRising(frequencyHz, 2));
            require(isOf(frequencyHz.length, magnitudeDb, phaseDegrees, uncertaintyDb));
        }
    }

    /**
     * Noise power in bands that adjoin, the lower ones one line of the spectrum wide.
     *
     * @param edgesHz ends of the bands, rising, one more than bands
     * @param levelDb mean density in each, dB re the returned reference tone in 1 Hz
     */
    public record Density(double[] edgesHz, double[] levelDb) {

        /** Checks that the bands adjoin. */
        public Density {
            require(isRising(edgesHz, 2) && isOf(edgesHz.length - 1, levelDb));
        }
    }

    /**
     * Distortion against level.
     *
     * @param frequencyHz frequency of the ladder
     * @param steps one entry a tone, in order of level
     */
    public record Ladder(double frequencyHz, List<Step> steps) {

        /** Copies the list so that the ladder cannot change. */
        public Ladder {
            require(frequencyHz > 0 && steps != null);
            steps = List.copyOf(steps);
        }
    }

    /**
     * One tone of a ladder.
     *
     * @param recordLevelDb level in the programme, dB re reference
     * @param k2AtMostPercent second harmonic re fundamental where it stood out of the noise,
     *     otherwise the bound it lies under; null if nothing is known
     * @param k3AtMostPercent the same of the third
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Step(double recordLevelDb, Double k2AtMostPercent, Double k3AtMostPercent) {

        /** Checks that the shares are some. */
        public Step {
            require(Math.abs(recordLevelDb) < LARGEST);
            require(isShare(k2AtMostPercent) && isShare(k3AtMostPercent));
        }
    }

    private static boolean isLevel(Double db) {
        return db != null && Math.abs(db) < LARGEST;
    }

    private static boolean isShare(Double percent) {
        return percent == null || percent >= 0 && percent < LARGEST;
    }

    private static boolean isRising(double[] x, int fewest) {
        boolean rising = x != null && x.length >= fewest && x[0] >= 0;
        for (int i = 1; rising && i < x.length; i++) {
            rising = x[i] > x[i - 1] && x[i] < LARGEST;
        }
        return rising;
    }

    private static boolean isOf(int length, double[]... all) {
        return Arrays.stream(all)
                .allMatch(
                        x ->
                                x != null
                                        && x.length == length
                                        && Arrays.stream(x).allMatch(v -> Math.abs(v) < LARGEST));
    }

    private static void require(boolean holds) {
        if (!holds) {
            throw new UnusableInputException(SAID.say("interface-figure"));
        }
    }
}
