package offtape.report.measure.speed;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import offtape.core.transport.ExpectedLine;
import offtape.core.transport.ExpectedLines;
import offtape.core.transport.ReelMovement;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;

/**
 * Gives the lines of a deviation the names of the parts that can make them. A line has a part's
 * name if its rate, with its uncertainty, lies where the part's dimensions allow, and if it moves
 * as such a part's line does. If several parts fit, all are named.
 */
public final class NamedParts {

    /** The thinnest and the thickest tape in use, µm (common practice, no source). */
    private static final double THINNEST = 6;

    private static final double THICKEST = 60;

    /** How far a thickness that was given may be out, as a share. */
    private static final double THICKNESS_ERROR = 0.2;

    /** A part that turns with the tape may change by this share besides the drift of the speed. */
    private static final double STEADY_SHARE = 3e-4;

    private final TransportDescription transport;
    private final double speedMmPerS;
    private final double driftShare;
    private final List<ExpectedLine> expected;

    private NamedParts(
            TransportDescription transport,
            OptionalDouble nominalMmPerS,
            double deviation,
            double driftShare) {
        this.transport = transport;
        this.speedMmPerS = nominalMmPerS.orElse(Double.NaN) * (1 + deviation);
        this.driftShare = driftShare;
        this.expected = ExpectedLines.of(transport, nominalMmPerS, deviation);
    }

    /**
     * Names the lines of a deviation.
     *
     * @param speed what was measured
     * @param sessionMmPerS nominal tape speed of the recording, or null to take the description's
     */
    public static Speed name(Speed speed, TransportDescription transport, Double sessionMmPerS) {
        double deviation = share(speed.deviation());
        double drift = share(speed.drift());
        Speed named =
                speed.withComponents(
                        name(speed.components(), transport, sessionMmPerS, deviation, drift));
        TransportSpeed own = speed.transport();
        return own == null
                ? named
                : named.withTransport(
                        own.with(
                                name(own.components(), transport, sessionMmPerS, deviation, drift),
                                new HiddenParts(transport, sessionMmPerS).notes(own)));
    }

    /**
     * Names lines.
     *
     * @param deviation of the mean speed from nominal, a share
     * @param drift of the speed over the tone, a share
     */
    static List<SpeedComponent> name(
            List<SpeedComponent> lines,
            TransportDescription transport,
            Double sessionMmPerS,
            double deviation,
            double drift) {
        Double nominal = sessionMmPerS == null ? transport.tapeSpeedMmPerS() : sessionMmPerS;
        OptionalDouble known =
                nominal == null ? OptionalDouble.empty() : OptionalDouble.of(nominal);
        NamedParts parts = new NamedParts(transport, known, deviation, drift);
        return lines.stream().map(c -> c.named(parts.nameOf(c))).toList();
    }

    private static double share(Quantity percent) {
        return percent.isKnown() ? percent.value() / 100 : 0;
    }

    private String nameOf(SpeedComponent line) {
        String names =
                expected.stream()
                        .filter(e -> liesAt(line, e) && movesAs(line, e))
                        .map(ExpectedLine::part)
                        .distinct()
                        .collect(Collectors.joining(" or "));
        return names.isEmpty() ? null : names;
    }

    private static boolean liesAt(SpeedComponent line, ExpectedLine e) {
        double hz = line.middleHz();
        double within = line.frequencyUncertaintyHz();
        return hz >= e.lowHz() - within && hz <= e.highHz() + within;
    }

    private boolean movesAs(SpeedComponent line, ExpectedLine e) {
        if (line.frequencyChangeUncertaintyHzPerMinute() == null) {
            return true;
        }
        return e.movement() == ExpectedLine.Movement.STEADY
                ? movesWithTheTape(line)
                : movesAsAReel(line, e.movement() == ExpectedLine.Movement.FASTER ? 1 : -1);
    }

    private boolean movesWithTheTape(SpeedComponent line) {
        if (!line.moves()) {
            return true;
        }
        double share = Math.abs(line.endFrequencyHz() / line.frequencyHz() - 1);
        double within = 2 * line.frequencyUncertaintyHz() / line.frequencyHz();
        return share <= STEADY_SHARE + 2 * driftShare + within;
    }

    private boolean movesAsAReel(SpeedComponent line, int sign) {
        Double given = transport.tapeThicknessMicrometres();
        double thin = given == null ? THINNEST : given * (1 - THICKNESS_ERROR);
        double thick = given == null ? THICKEST : given * (1 + THICKNESS_ERROR);
        double change = line.moves() ? sign * line.frequencyChangeHzPerMinute() : 0;
        // a line counts as steady up to four standard deviations, which are two uncertainties
        double within = 2 * line.frequencyChangeUncertaintyHzPerMinute();
        return change >= perMinute(line, thin) - within
                && change <= perMinute(line, thick) + within;
    }

    private double perMinute(SpeedComponent line, double thickness) {
        return 60 * ReelMovement.hzPerSecond(line.middleHz(), speedMmPerS, thickness);
    }
}
