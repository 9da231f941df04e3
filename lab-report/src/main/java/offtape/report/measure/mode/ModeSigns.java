package offtape.report.measure.mode;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import offtape.core.programme.CueSheet;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.measure.speed.ToneReading;
import offtape.report.measure.transport.HeadDelays;
import offtape.report.result.Distortion;
import offtape.report.result.Speed;

/**
 * What a recording shows of how it came about.
 *
 * @param rateError ppm by which the whole return is too fast (+) or too slow, k = 2
 * @param delaySeconds where the programme begins in the recording
 * @param steady whether the speed tone wavers no more than converters do
 * @param saturates whether a ladder is distorted as tape is
 * @param twoHeads whether rates are missing that two heads on one tape hear alike, and the delay
 *     fits
 */
record ModeSigns(
        Quantity rateError,
        double delaySeconds,
        boolean steady,
        boolean saturates,
        boolean twoHeads) {

    /**
     * Sample clocks of sound interfaces are within 100 ppm of their nominal rate, so two of them
     * differ by less than this (common practice, no source).
     */
    static final double CLOCKS_PPM = 200;

    /**
     * One machine repeats its speed from one pass to the next within this, unless something slips
     * (common practice, no source).
     */
    static final double SAME_MACHINE_PPM = 3000;

    /** Weighted wavering below which no tape was in the way, percent. */
    private static final double STEADY_PERCENT = 0.001;

    private static final double NOISE_TIMES = 3;
    private static final double SLOWEST_WOW_HZ = 0.5;

    private static final double LONGEST_LOOP_S = 0.25;

    /** A return that was put in place exactly may seem early by so much. */
    private static final double EXACT_S = 0.001;

    /** Interfaces answer sooner than this (common practice, no source). */
    private static final double LONGEST_INTERFACE_S = 0.06;

    private static final double SHORTEST_HEADS_S = 0.005;
    private static final double LONGEST_HEADS_S = 1.5;

    static ModeSigns of(ProgrammeReturn ret, ToneReading tone, List<Distortion> ladders) {
        ModeSigns signs =
                new ModeSigns(
                        rateError(ret, tone.speed()),
                        ret.location().delaySeconds(),
                        isSteady(tone.speed()),
                        ladders.stream().anyMatch(d -> d.levelAtK3ThreePercent().isKnown()),
                        false);
        return tone.deviation() != null && signs.mayHaveTwoHeads()
                ? signs.withTwoHeads(isOfTwoHeads(tone.deviation(), signs.delaySeconds()))
                : signs;
    }

    private boolean mayHaveTwoHeads() {
        return isRateOfClocks() && isDelayOfHeads() && !steady;
    }

    private ModeSigns withTwoHeads(boolean shown) {
        return new ModeSigns(rateError, delaySeconds, steady, saturates, shown);
    }

    private static boolean isOfTwoHeads(HeardDeviation heard, double delaySeconds) {
        OptionalDouble heads = HeadDelays.shown(heard, LONGEST_HEADS_S);
        return heads.isPresent()
                && heads.getAsDouble() < delaySeconds + EXACT_S
                && heads.getAsDouble() > delaySeconds - LONGEST_INTERFACE_S;
    }

    /** Rate of the return from its first to its last moment. Wow moves both ends in time. */
    private static Quantity rateError(ProgrammeReturn ret, Speed heard) {
        CueSheet sheet = ret.sheet();
        double length = sheet.seconds(sheet.frames());
        double returned = ret.map().recordingSeconds(length) - ret.map().recordingSeconds(0);
        double wow = heard.wowRms().isKnown() ? heard.wowRms().value() / 100 : 0;
        double late = Math.sqrt(2) * wow / (2 * Math.PI * SLOWEST_WOW_HZ);
        double end = Math.sqrt(2) * ret.location().delayUncertaintySeconds();
        return Quantity.known(
                1e6 * (length / returned - 1), "ppm", 1e6 * Math.hypot(2 * late, end) / length);
    }

    private static boolean isSteady(Speed heard) {
        if (!heard.weightedRms().isKnown()) {
            return false;
        }
        double floor = heard.weightedFloor().isKnown() ? heard.weightedFloor().value() : 0;
        return heard.weightedRms().value() < STEADY_PERCENT + NOISE_TIMES * floor;
    }

    private double smallestErrorPpm() {
        return Math.max(0, Math.abs(rateError.value()) - rateError.uncertainty());
    }

    /** Whether the rate can be that of two sample clocks. */
    boolean isRateOfClocks() {
        return smallestErrorPpm() < CLOCKS_PPM;
    }

    /** Whether the rate can be that of one machine in two passes. */
    boolean isRateOfOneMachine() {
        return smallestErrorPpm() < SAME_MACHINE_PPM;
    }

    /** Whether the delay is one that an interface alone has. */
    boolean isDelayOfLoop() {
        return delaySeconds > -EXACT_S && delaySeconds < LONGEST_LOOP_S;
    }

    /** Whether the delay is one that two heads have. */
    boolean isDelayOfHeads() {
        return delaySeconds > SHORTEST_HEADS_S && delaySeconds < LONGEST_HEADS_S;
    }

    /** The rate in words. */
    String rateText() {
        return String.format(Locale.ROOT, "%+.3f %%", rateError.value() / 1e4);
    }

    /** The delay in words. */
    String delayText() {
        return String.format(Locale.ROOT, "%.0f ms", 1000 * delaySeconds);
    }
}
