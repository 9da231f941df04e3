package offtape.cli.lineup;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.text.Language;

/**
 * The last readings for scripts; what is unknown is null.
 *
 * @param view what was looked at
 * @param referenceDbfs level of the reference tone, dB re a full-scale sine
 * @param sent what was sent, or null
 * @param returns one a channel
 * @param rightLessLeftDb difference of the returns' levels
 * @param delayMs from playing to the last mark's return, the computer's buffers included
 * @param delayChangeMs the same less that of the first mark; null with one mark
 * @param interchannel how the channels lie in time
 * @param tapeHz frequency of a calibration tape's tone
 * @param late how often the computer was late
 * @param advice what to turn
 */
public record Answer(
        String view,
        double referenceDbfs,
        Sending sent,
        List<Return> returns,
        Double rightLessLeftDb,
        Double delayMs,
        Double delayChangeMs,
        Interchannel interchannel,
        Double tapeHz,
        long late,
        List<String> advice) {

    private static final double SILENT_DBFS = -199;

    /**
     * What was sent.
     *
     * @param frequencyHz of the tone, null for many at once
     * @param levelDb peak, dB re the reference tone
     * @param channels both, left or right
     */
    public record Sending(Double frequencyHz, double levelDb, String channels) {}

    /**
     * What came back on a channel.
     *
     * @param levelDb tone, dB re what is sent, or re the target of a calibration tape; null if none
     *     comes back
     * @param levelDbfs tone, dB re a full-scale sine
     * @param k3Percent third harmonic, null if hidden or beyond the band
     * @param k3BelowPercent what it lies below if it is hidden
     * @param noiseDb without a tone, 20 Hz to 20 kHz, dB re reference; null if it was not measured
     *     or is digital silence
     * @param noiseADb the same with weighting A
     * @param overBiasDb decibels below the maximum that was passed; null on this side of it
     */
    public record Return(
            String channel,
            Double levelDb,
            Double levelDbfs,
            Double k3Percent,
            Double k3BelowPercent,
            Double noiseDb,
            @JsonProperty("noiseADb") Double noiseADb,
            double peakDbfs,
            boolean clipped,
            Double overBiasDb) {}

    /**
     * How the channels lie in time.
     *
     * @param delayMicroseconds positive if right is late
     * @param plusMinusMicroseconds expanded uncertainty by the noise
     * @param periodMicroseconds by which the delay of a single tone is ambiguous, else null
     * @param monoLossAt10kHzDb of a mono sum, 0 or less
     */
    public record Interchannel(
            double delayMicroseconds,
            double plusMinusMicroseconds,
            Double periodMicroseconds,
            boolean inverted,
            Double monoLossAt10kHzDb) {}

    /** Copies the lists. */
    public Answer {
        returns = List.copyOf(returns);
        advice = List.copyOf(advice);
    }

    /** Of readings. */
    public static Answer of(Readings r) {
        Desk desk = r.desk();
        List<Return> returns = new ArrayList<>();
        for (int c = 0; c < r.peaks().size(); c++) {
            returns.add(returned(r, c));
        }
        boolean timed = r.delay().state() == Delay.State.FOUND;
        return new Answer(
                desk.view().name().toLowerCase(Locale.ROOT),
                desk.limits().referenceDbfs(),
                sending(desk),
                returns,
                r.rightLessLeftDb(),
                timed ? r.delay().milliseconds() : null,
                timed && r.delay().marks() > 1 ? r.delay().moreMilliseconds() : null,
                interchannel(r.pair()),
                r.tapeHz(),
                r.late(),
                new Words(Wording.in(Language.ENGLISH)).of(r));
    }

    private static Sending sending(Desk desk) {
        return desk.sends()
                ? new Sending(
                        desk.sentHz() > 0 ? desk.sentHz() : null,
                        desk.levelDb(),
                        desk.channels().key())
                : null;
    }

    private static Return returned(Readings r, int c) {
        ToneReading tone = c < r.tones().size() ? r.tones().get(c) : null;
        NoiseReading noise = c < r.noise().size() ? r.noise().get(c) : null;
        BiasTrack bias = c < r.bias().size() ? r.bias().get(c) : null;
        Desk.Limits limits = r.desk().limits();
        double against = r.desk().sends() ? r.desk().levelDbfs() : limits.targetDbfs();
        boolean isTone = tone != null && tone.isTone();
        return new Return(
                c == 0 ? "left" : "right",
                isTone ? (Double) (tone.levelDbfs() - against) : null,
                isTone ? (Double) tone.levelDbfs() : null,
                isTone ? tone.k3Percent() : null,
                isTone ? tone.k3BelowPercent() : null,
                noise(noise == null ? SILENT_DBFS : noise.unweightedDbfs(), limits),
                noise(noise == null ? SILENT_DBFS : noise.aWeightedDbfs(), limits),
                r.peaks().get(c).dbfs(),
                r.peaks().get(c).clipped(),
                bias != null && bias.side() == BiasTrack.Side.OVER ? bias.belowDb() : null);
    }

    /** Digital silence has no level. */
    private static Double noise(double dbfs, Desk.Limits limits) {
        return dbfs <= SILENT_DBFS ? null : (Double) (dbfs - limits.referenceDbfs());
    }

    private static Interchannel interchannel(PairReading p) {
        if (p == null || p.kind() == PairReading.Kind.UNRELATED) {
            return null;
        }
        return new Interchannel(
                p.delayMicroseconds(),
                p.plusMinusMicroseconds(),
                p.kind() == PairReading.Kind.ONE_TONE ? p.periodMicroseconds() : null,
                p.inverted(),
                p.monoLossDb());
    }
}
