package offtape.report.measure.mode;

import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.InterfaceFigures;

/** The way from record to replay head, off tape: in time, and in length where speed is known. */
final class HeadFigures {

    private static final Sentences SAID = Sentences.near(HeadFigures.class);

    /** What filters of a machine may delay, k = 2: an upper edge of 15 kHz takes 15 µs. */
    private static final double FILTERS_S = 2e-5;

    /** Two clocks that were alike may have parted by so much since the loopback, ppm. */
    private static final double SAME_CLOCKS_PPM = 3;

    /**
     * Speed off tape is not seen; machines keep theirs within this (common practice, no source).
     */
    private static final double SPEED_SHARE = 0.01;

    /** A distance that somebody measured is right within this (common practice, no source). */
    private static final double SPACING_MM = 0.5;

    /**
     * Speed may change by this share over a programme unseen, and moves the delay (common practice,
     * no source).
     */
    private static final double DRIFT_SHARE = 0.002;

    private static final double SHORTEST_S = 0.005;
    private static final double LONGEST_S = 1.5;

    /** What a lag of which nothing is known may be. */
    private static final double USUAL_S = 0.15;

    /**
     * The time from record to replay head: the lag between writing and reading.
     *
     * @param seconds mean over the programme
     * @param uncertaintySeconds expanded, k = 2
     */
    private record Lag(double seconds, double uncertaintySeconds) {}

    private final ProgrammeReturn ret;
    private final Optional<LatenessFit> lateness;
    private final Capture capture;
    private final Double tapeSpeedMmPerS;

    HeadFigures(ProgrammeReturn ret, Capture capture, Double tapeSpeedMmPerS) {
        this.ret = ret;
        this.lateness = Lateness.of(ret);
        this.capture = capture;
        this.tapeSpeedMmPerS = tapeSpeedMmPerS;
    }

    /** The lag as a figure, known with a loopback only. */
    Quantity headDelay() {
        if (capture.loopback() == null) {
            return Quantity.unknown(SAID.say("delay-holds-interface"));
        }
        Optional<Lag> less = lessInterface();
        if (less.isEmpty()) {
            return Quantity.unknown(SAID.say("no-mean-delay"));
        }
        return less.filter(HeadFigures::isOfHeads)
                .map(d -> Quantity.known(1000 * d.seconds(), "ms", 1000 * d.uncertaintySeconds()))
                .orElseGet(() -> Quantity.unknown(SAID.say("delay-not-of-heads")));
    }

    /** The distance of the heads along the tape. */
    Quantity headSpacing() {
        if (capture.headSpacingMm() != null) {
            return Quantity.known(capture.headSpacingMm(), "mm", SPACING_MM);
        }
        Quantity delay = headDelay();
        if (!delay.isKnown()) {
            return delay;
        }
        if (tapeSpeedMmPerS == null) {
            return Quantity.unknown(SAID.say("spacing-without-speed"));
        }
        double mm = delay.value() / 1000 * tapeSpeedMmPerS;
        return Quantity.known(
                mm, "mm", mm * Math.hypot(SPEED_SHARE, delay.uncertainty() / delay.value()));
    }

    /** By how much the recording clock is fast; empty if too little of the programme is heard. */
    Optional<Quantity> clock(boolean tape) {
        double length = ret.sheet().seconds(ret.sheet().frames());
        return lateness.map(
                fit -> {
                    double lag = tape ? lagSeconds(fit) : 0;
                    double drift = 1e6 * DRIFT_SHARE * lag / length;
                    return Quantity.known(
                            fit.slopePpm(), "ppm", Math.hypot(fit.slopeUncertaintyPpm(), drift));
                });
    }

    /**
     * Mean delay of the path, interface included; empty if too little of the programme is heard.
     */
    Optional<Quantity> meanDelay() {
        return lateness.map(
                fit ->
                        Quantity.known(
                                1000 * fit.startSeconds(),
                                "ms",
                                1000 * fit.startUncertaintySeconds()));
    }

    /** The lag from the best that is known of it. */
    private double lagSeconds(LatenessFit fit) {
        Optional<Double> less = lessInterface().filter(HeadFigures::isOfHeads).map(Lag::seconds);
        if (less.isPresent()) {
            return less.get();
        }
        if (capture.headSpacingMm() != null && tapeSpeedMmPerS != null) {
            return capture.headSpacingMm() / tapeSpeedMmPerS;
        }
        Lag whole = new Lag(fit.startSeconds(), fit.startUncertaintySeconds());
        return isOfHeads(whole) ? whole.seconds() : USUAL_S;
    }

    private static boolean isOfHeads(Lag lag) {
        return lag.seconds() > SHORTEST_S && lag.seconds() < LONGEST_S;
    }

    /** The delay without the interface's; empty without a loopback that tells its own. */
    private Optional<Lag> lessInterface() {
        InterfaceFigures own = capture.loopback() == null ? null : capture.loopback().figures();
        if (own == null || lateness.isEmpty() || !own.delay().isKnown()) {
            return Optional.empty();
        }
        LatenessFit fit = lateness.get();
        boolean same =
                own.clockPpm() != null
                        && Math.abs(fit.slopePpm() - own.clockPpm())
                                < fit.slopeUncertaintyPpm() + SAME_CLOCKS_PPM;
        LatenessFit used = same ? fit.withSlope(own.clockPpm()) : fit;
        double loop = own.delay().value() / 1000;
        double fitted =
                Math.hypot(used.startUncertaintySeconds(), own.delay().uncertainty() / 1000);
        double seconds = used.startSeconds() - loop;
        // a slope that is not the clocks' own may be drift, which the start then lacks half of
        double drift = same ? 0 : DRIFT_SHARE / 2 * seconds;
        return Optional.of(new Lag(seconds, Math.hypot(Math.hypot(fitted, FILTERS_S), drift)));
    }
}
