package offtape.report.measure.mode;

import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.InterfaceFigures;

/** The way from record to replay head, off tape: in time, and in length where speed is known. */
final class HeadFigures {

    private static final Sentences SAID = Sentences.near(HeadFigures.class);

    /** An interface without a loopback may delay by so much (common practice, no source). */
    private static final double UNKNOWN_INTERFACE_S = 0.03;

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

    /** The lag, from the best that is known; empty if it is none that heads can have. */
    Optional<HeadLag> delay() {
        Optional<HeadLag> less = lessInterface().filter(HeadFigures::isOfHeads);
        if (less.isPresent()) {
            return less;
        }
        return capture.headSpacingMm() != null && tapeSpeedMmPerS != null
                ? Optional.of(fromSpacing())
                : whole().filter(HeadFigures::isOfHeads);
    }

    /** The lag as a figure, known with a loopback only. */
    Quantity headDelay() {
        if (capture.loopback() == null) {
            return Quantity.unknown(SAID.say("delay-holds-interface"));
        }
        Optional<HeadLag> less = lessInterface();
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
                    double lag = tape ? delay().map(HeadLag::seconds).orElse(LONGEST_S / 10) : 0;
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

    private static boolean isOfHeads(HeadLag delay) {
        return delay.seconds() > SHORTEST_S && delay.seconds() < LONGEST_S;
    }

    private Optional<HeadLag> lessInterface() {
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
        return Optional.of(
                new HeadLag(
                        seconds,
                        Math.hypot(Math.hypot(fitted, FILTERS_S), drift),
                        SAID.say("lag-less-loopback")));
    }

    private HeadLag fromSpacing() {
        double seconds = capture.headSpacingMm() / tapeSpeedMmPerS;
        double share = Math.hypot(SPEED_SHARE, SPACING_MM / capture.headSpacingMm());
        return new HeadLag(seconds, share * seconds, SAID.say("lag-from-spacing"));
    }

    private Optional<HeadLag> whole() {
        double seconds =
                lateness.map(LatenessFit::startSeconds).orElse(ret.location().delaySeconds());
        double fitted =
                lateness.map(LatenessFit::startUncertaintySeconds)
                        .orElse(ret.location().delayUncertaintySeconds());
        return Optional.of(
                new HeadLag(
                        seconds, Math.hypot(fitted, UNKNOWN_INTERFACE_S), SAID.say("lag-whole")));
    }
}
