package offtape.report.measure.mode;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.core.text.Sentences;
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

    private static final Sentences SAID = Sentences.near(ModeFigures.class);

    private static final Quantity MODE_NOT_SAID = Quantity.unknown(SAID.say("mode-not-said"));

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
                .orElseGet(() -> Quantity.unknown(SAID.say("no-mean-delay")));
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
                    heard.withMean(Quantity.unknown(SAID.say("own-tape")), heard.drift())
                            .withPassDifference(heard.deviation());
            case OFF_TAPE ->
                    heard.withMean(
                            Quantity.unknown(SAID.say("off-tape-speed")),
                            Quantity.unknown(SAID.say("off-tape-drift")));
            case LOOPBACK ->
                    heard.withMean(
                            Quantity.unknown(SAID.say("no-tape")),
                            Quantity.unknown(SAID.say("no-tape")));
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
                    case REFERENCE_TAPE -> SAID.say("heads-elsewhere");
                    case TWO_PASS -> SAID.say("heads-rewound");
                    case OFF_TAPE -> SAID.say("heads-not-together");
                    case LOOPBACK -> SAID.say("no-tape");
                });
    }

    private Quantity clock() {
        if (mode() == null) {
            return MODE_NOT_SAID;
        }
        if (mode() == CaptureMode.REFERENCE_TAPE) {
            return Quantity.unknown(SAID.say("clock-elsewhere"));
        }
        if (mode() == CaptureMode.TWO_PASS) {
            return Quantity.unknown(SAID.say("clock-two-passes"));
        }
        if (!signs.isRateOfClocks()) {
            return Quantity.unknown(SAID.say("clock-not-together", signs.rateText()));
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
