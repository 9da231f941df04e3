package offtape.report.measure.mode;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.ToneReading;
import offtape.report.measure.transport.OffTapeSpeed;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Speed;
import offtape.report.result.Timing;

/**
 * The figures of speed and time that hang on the capture mode: which the mode lets one know, and
 * why the others stay unknown.
 */
public final class ModeFigures {

    private static final Quantity MODE_NOT_SAID =
            Quantity.unknown(
                    "How the recording was made was not said, and this figure hangs on it: measure"
                            + " again with --mode.");

    private final ProgrammeReturn ret;
    private final ToneReading tone;
    private final Speed heard;
    private final ModeSigns signs;
    private final ModeFinding finding;
    private final HeadFigures heads;
    private final Capture capture;

    /**
     * Decides on the mode; asks if the recording does not show it.
     *
     * @param tone what the speed tone tells
     * @param ladders distortion of the return
     * @param tapeSpeedMmPerS nominal tape speed, or null if not stated
     */
    public ModeFigures(
            ProgrammeReturn ret,
            ToneReading tone,
            List<Distortion> ladders,
            Capture capture,
            Double tapeSpeedMmPerS) {
        this.ret = ret;
        this.tone = tone;
        this.heard = tone.speed();
        this.signs = ModeSigns.of(ret, tone, ladders);
        this.finding = ModeFinding.of(signs, capture);
        this.capture = capture;
        boolean together = mode() == CaptureMode.OFF_TAPE || mode() == CaptureMode.LOOPBACK;
        this.heads =
                together && signs.isRateOfClocks()
                        ? new HeadFigures(ret, capture, tapeSpeedMmPerS)
                        : null;
    }

    /** Mean delay over the programme of what was recorded while it played, ms. */
    public Quantity meanDelay() {
        return Optional.ofNullable(heads)
                .flatMap(HeadFigures::meanDelay)
                .orElseGet(
                        () ->
                                Quantity.unknown(
                                        "Too few markers and sweeps were heard to tell the mean delay"
                                                + " over the programme."));
    }

    /** The mode, or null if it is not known. */
    public CaptureMode mode() {
        return finding.mode();
    }

    /** What the reader should know of the mode. */
    public List<HealthNote> notes() {
        return finding.notes();
    }

    /** The figures of speed that the mode lets one know. */
    public Speed speed() {
        if (mode() == null) {
            return heard.withMean(MODE_NOT_SAID, heard.drift());
        }
        return switch (mode()) {
            case REFERENCE_TAPE -> heard;
            case TWO_PASS ->
                    heard.withMean(
                                    Quantity.unknown(
                                            "The machine recorded and replayed this tape itself, so a wrong speed"
                                                    + " cancels. To see it, replay a tape that was recorded on a"
                                                    + " machine known to be right, such as a calibration tape."),
                                    heard.drift())
                            .withPassDifference(heard.deviation());
            case OFF_TAPE ->
                    heard.withMean(
                            Quantity.unknown(
                                    "Recorded and replayed at the same moment, a tape that runs too fast is"
                                            + " written too fast and read too fast, and no pitch changes. To"
                                            + " see the speed, replay a tape that was recorded on a machine"
                                            + " known to be right, such as a calibration tape."),
                            Quantity.unknown(
                                    "Recorded and replayed at the same moment, a slow change of speed is"
                                            + " written and read alike and leaves nothing to hear."));
            case LOOPBACK ->
                    heard.withMean(
                            Quantity.unknown(
                                    "No tape was in the way; the interface measured itself."),
                            Quantity.unknown(
                                    "No tape was in the way; the interface measured itself."));
        };
    }

    /**
     * The transport's own speed, off tape.
     *
     * @param tapeSpeedMmPerS nominal tape speed, or null
     */
    public OffTapeSpeed transport(Double tapeSpeedMmPerS) {
        boolean isGiven = capture.headSpacingMm() != null && tapeSpeedMmPerS != null;
        return OffTapeSpeed.of(
                tone,
                speed().deviation(),
                headLag(HeadFigures::headDelay),
                isGiven ? (Double) (capture.headSpacingMm() / tapeSpeedMmPerS) : null,
                ret.location().delaySeconds());
    }

    /** Place and clock. */
    public Timing timing(String polarity) {
        double seconds = ret.location().delaySeconds();
        return new Timing(
                Quantity.known(
                        1000 * seconds, "ms", 1000 * ret.location().delayUncertaintySeconds()),
                headLag(HeadFigures::headDelay),
                headLag(HeadFigures::headSpacing),
                polarity,
                clock());
    }

    private Quantity headLag(Function<HeadFigures, Quantity> offTape) {
        if (mode() == null) {
            return MODE_NOT_SAID;
        }
        if (mode() == CaptureMode.OFF_TAPE && heads != null) {
            return offTape.apply(heads);
        }
        return Quantity.unknown(
                switch (mode()) {
                    case REFERENCE_TAPE ->
                            "A tape recorded elsewhere was replayed, so the"
                                    + " recording does not show the way from record to replay head.";
                    case TWO_PASS ->
                            "The tape was rewound between recording and replay, so the"
                                    + " delay is not that of the way from record to replay head.";
                    case OFF_TAPE ->
                            "The return runs too fast or too slow to have been recorded while the"
                                    + " programme played.";
                    case LOOPBACK -> "No tape was in the way; the interface measured itself.";
                });
    }

    private Quantity clock() {
        if (mode() == null) {
            return MODE_NOT_SAID;
        }
        if (mode() == CaptureMode.REFERENCE_TAPE) {
            return Quantity.unknown(
                    "With a tape recorded elsewhere an error of the recorder's clock looks like one"
                            + " of tape speed and cannot be told from it.");
        }
        if (mode() == CaptureMode.TWO_PASS) {
            return Quantity.unknown(
                    "The machine's speed may differ between its two passes, and an error of the"
                            + " recorder's clock looks the same.");
        }
        if (!signs.isRateOfClocks()) {
            return Quantity.unknown(
                    "The return runs "
                            + signs.rateText()
                            + " off, more than two sample clocks differ, so the recording was hardly"
                            + " made in this mode.");
        }
        return heads.clock(mode() == CaptureMode.OFF_TAPE)
                .orElseGet(() -> clockError(signs.rateError()));
    }

    /** A clock that is fast writes more frames a second, so that the return seems slow. */
    private static Quantity clockError(Quantity rateError) {
        return Quantity.known(
                -rateError.value() / (1 + rateError.value() / 1e6), "ppm", rateError.uncertainty());
    }
}
