package offtape.report.apply.model;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.model.Bend;
import offtape.report.result.HumLine;
import offtape.report.result.SpeedComponent;

/**
 * A model as it is written to {@code model.json}. Levels are dB re the programme's reference;
 * curves are for a sine of the reference's peak as 1.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param machineName the user's name for the machine, or null
 * @param recordingSha256 digest of the recording it was fitted to, or null
 * @param software name and version of the software that measured
 * @param referenceDbfs the reference, dB re a full-scale sine
 * @param sampleRateHz rate of the impulse responses
 * @param timeZeroFrame frame of the impulse responses that stands for no delay
 * @param polarity {@code normal} or {@code inverted}
 * @param channels left and right
 * @param leaks what the channels hear of each other
 * @param motion how the sound wavers, or null
 * @param files what lies beside it
 * @param notes plain sentences
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ModelDescription(
        String format,
        int version,
        String machineName,
        String recordingSha256,
        String software,
        double referenceDbfs,
        int sampleRateHz,
        int timeZeroFrame,
        String polarity,
        List<Channel> channels,
        List<Leak> leaks,
        Motion motion,
        List<String> files,
        List<String> notes) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-model";

    /** The only version there is. */
    public static final int VERSION = 1;

    private static final double LOWEST_HZ = 10;
    private static final double HIGHEST_HZ = 24_000;
    private static final int STEP = LogGrid.POINTS_AN_OCTAVE / 12;

    /**
     * One channel.
     *
     * @param gainDb at 1 kHz, re left
     * @param lateMicroseconds how much later than the mean of both
     * @param frequencyHz frequencies of response and phase
     * @param magnitudeDb 0 dB at 1 kHz
     * @param phaseDegrees without the delay common to both channels
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Channel(
            String channel,
            double gainDb,
            double lateMicroseconds,
            double[] frequencyHz,
            double[] magnitudeDb,
            double[] phaseDegrees,
            Saturation saturation,
            Noise noise) {}

    /**
     * Emphasis (1 + iωτ)/(1 + iωσ), curve y = x − Σ share·(x − bend(x)), y + even·y², and the
     * inverse of the emphasis.
     */
    public record Saturation(
            double emphasisMicroseconds,
            double shelfMicroseconds,
            List<BendShare> bends,
            double even) {}

    /** One way of flattening and how much of it; {@code limit} re the reference's peak. */
    public record BendShare(String shape, double limit, double share) {}

    /** Density of hiss re the reference tone in a hertz, and mains lines. */
    public record Noise(double[] frequencyHz, double[] densityDbPerHz, List<HumLine> hum) {}

    /** What {@code into} hears, re what it returns itself; phase re the channel that sounds. */
    public record Leak(
            String from,
            String into,
            double[] frequencyHz,
            double[] levelDb,
            double[] phaseDegrees) {}

    /** Lines of the speed deviation, and density of the rest in percent squared a hertz. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Motion(List<Line> lines, double[] rateHz, double[] restDbPercent2PerHz) {}

    /** One line. */
    public record Line(double rateHz, double peakPercent) {}

    static ModelDescription of(
            MachineModel model, int rateHz, int timeZeroFrame, List<String> files) {
        return new ModelDescription(
                FORMAT,
                VERSION,
                model.session().machineName(),
                model.session().recordingSha256(),
                model.session().software(),
                model.referenceDbfs(),
                rateHz,
                timeZeroFrame,
                model.inverted() ? "inverted" : "normal",
                List.of(channel(model, 0), channel(model, 1)),
                leaks(model),
                motion(model.motion()),
                files,
                model.notes());
    }

    private static Channel channel(MachineModel model, int c) {
        ChannelModel own = model.channels()[c];
        double[] hz =
                IntStream.range(0, LogGrid.SIZE)
                        .filter(i -> i % STEP == 0)
                        .mapToDouble(LogGrid::hz)
                        .filter(f -> f >= LOWEST_HZ && f <= HIGHEST_HZ)
                        .toArray();
        return new Channel(
                own.name(),
                own.gainDb(),
                1e6 * own.lateSeconds(),
                hz,
                Arrays.stream(hz).map(f -> LogGrid.at(own.levelDb(), f)).toArray(),
                Arrays.stream(hz)
                        .map(f -> Math.toDegrees(LogGrid.at(own.phase(), f)))
                        .map(d -> own.opposite() ? d + 180 : d)
                        .toArray(),
                saturation(own.bent()),
                model.hiss() == null ? null : noise(model.hiss()[c]));
    }

    private static Saturation saturation(BentModel bent) {
        List<BendShare> bends =
                IntStream.range(0, bent.curve().bends().size())
                        .mapToObj(
                                i -> {
                                    Bend bend = bent.curve().bends().get(i);
                                    return new BendShare(
                                            bend.shape() == Bend.Shape.TANH ? "tanh" : "cubic",
                                            bend.limit(),
                                            bent.curve().shares().get(i));
                                })
                        .toList();
        return new Saturation(
                1e6 * bent.emphasis().seconds(),
                1e6 * bent.emphasis().shelfSeconds(),
                bends,
                bent.curve().even());
    }

    private static Noise noise(HissModel hiss) {
        return new Noise(hiss.densityDb().hz(), hiss.densityDb().db(), hiss.hum());
    }

    private static List<Leak> leaks(MachineModel model) {
        String[] names = {"left", "right"};
        return IntStream.range(0, 2)
                .filter(into -> model.leaks()[into] != null)
                .mapToObj(
                        into -> {
                            LeakModel leak = model.leaks()[into];
                            return new Leak(
                                    names[1 - into],
                                    names[into],
                                    leak.levelDb().hz(),
                                    leak.levelDb().db(),
                                    Arrays.stream(leak.phase().db())
                                            .map(Math::toDegrees)
                                            .toArray());
                        })
                .toList();
    }

    private static Motion motion(MotionModel motion) {
        if (motion == null) {
            return null;
        }
        PointCurve rest = motion.restDb();
        return new Motion(
                motion.lines().stream().map(ModelDescription::line).toList(),
                rest == null ? null : rest.hz(),
                rest == null ? null : rest.db());
    }

    private static Line line(SpeedComponent line) {
        return new Line(line.middleHz(), line.peakPercent());
    }
}
