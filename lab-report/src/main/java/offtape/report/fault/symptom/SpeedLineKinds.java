package offtape.report.fault.symptom;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import offtape.report.result.SpeedComponent;

/**
 * Lines of the speed deviation, sorted by the kind of part that makes such lines: by the part's
 * name where the transport's dimensions are known, else by its movement, its multiples, and the
 * diameter v/(π·f) of what turns at its rate.
 */
final class SpeedLineKinds {

    /** Kinds of parts. */
    enum Kind {
        /** A steady line of a thin shaft. */
        CAPSTAN,
        /** A line with multiples, or of a wider roller. */
        ROLLER,
        /** A line that moves with the pack, or of something as wide. */
        REEL,
        /** Mains and motor: faster than any part the tape touches. */
        MOTOR
    }

    /** Motors and mains lie above this, hertz (common practice, no source). */
    private static final double MOTOR_HZ = 22;

    /** A multiple is one within this share of the rate. */
    private static final double MULTIPLE_SHARE = 0.03;

    /** Multiples weaker than this share of the first are no sign of a flat spot. */
    private static final double MULTIPLE_STRENGTH = 0.2;

    private final List<SpeedComponent> lines;
    private final double capstanMm;
    private final double rollerMm;
    private final double mmPerS;

    /**
     * Lines at a tape speed.
     *
     * @param mmPerS millimetres per second
     */
    SpeedLineKinds(List<SpeedComponent> lines, double mmPerS) {
        this.lines = lines;
        this.mmPerS = mmPerS;
        // widest capstan and roller in use (common practice, no source)
        capstanMm = TapeKind.isCassette(mmPerS) ? 5 : 16;
        rollerMm = TapeKind.isCassette(mmPerS) ? 15 : 55;
    }

    /** The peak deviation of the strongest line of each kind, percent. */
    Map<Kind, Double> strongest() {
        Map<Kind, Double> peaks = new EnumMap<>(Kind.class);
        for (SpeedComponent line : lines) {
            peaks.merge(kind(line), line.peakPercent(), Math::max);
        }
        return peaks;
    }

    private Kind kind(SpeedComponent line) {
        Kind named = named(line.part());
        if (named != null) {
            return named;
        }
        SpeedComponent first = fundamental(line);
        if (first != line) {
            return kind(first);
        }
        double hz = line.middleHz();
        if (hz > MOTOR_HZ) {
            return Kind.MOTOR;
        }
        double mm = mmPerS / (Math.PI * hz);
        if (mm > rollerMm || line.moves() && mm > capstanMm) {
            return Kind.REEL;
        }
        return mm > capstanMm || hasMultiples(line) ? Kind.ROLLER : Kind.CAPSTAN;
    }

    private static Kind named(String part) {
        if (part == null) {
            return null;
        }
        if (part.contains("capstan")) {
            return Kind.CAPSTAN;
        }
        if (part.contains("roller")) {
            return Kind.ROLLER;
        }
        if (part.contains("reel")) {
            return Kind.REEL;
        }
        return part.contains("motor") || part.contains("mains") ? Kind.MOTOR : null;
    }

    /** The line of which this one is a multiple, or itself. */
    private SpeedComponent fundamental(SpeedComponent line) {
        return lines.stream()
                .filter(l -> l.middleHz() < 0.7 * line.middleHz())
                .filter(l -> isMultiple(line, l))
                .filter(l -> l.peakPercent() > line.peakPercent())
                .min(Comparator.comparingDouble(SpeedComponent::middleHz))
                .orElse(line);
    }

    private boolean hasMultiples(SpeedComponent line) {
        return lines.stream()
                        .filter(l -> l.middleHz() > 1.5 * line.middleHz())
                        .filter(l -> isMultiple(l, line))
                        .filter(l -> l.peakPercent() > MULTIPLE_STRENGTH * line.peakPercent())
                        .count()
                >= 2;
    }

    private static boolean isMultiple(SpeedComponent line, SpeedComponent of) {
        double order = line.middleHz() / of.middleHz();
        return order < 6.5 && Math.abs(order - Math.rint(order)) < MULTIPLE_SHARE;
    }
}
