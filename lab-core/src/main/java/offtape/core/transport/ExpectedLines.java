package offtape.core.transport;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.json.Range;
import offtape.core.standard.TransportGeometry;
import offtape.core.text.Sentences;

/**
 * The rates of a transport's parts: f = v/(π·D) for what turns on the tape, v/(2π·r) for reels, and
 * harmonics where they are usual.
 *
 * <p>The tolerances are common practice, no source: diameters as they are read off a calliper, a
 * rubber roller that is pressed flat, the radius of a pack, a motor's slip, the mains.
 */
public final class ExpectedLines {

    private static final Sentences SAID = Sentences.near(ExpectedLines.class);

    private static final double DIAMETER = 0.006;
    private static final double RUBBER = 0.012;
    private static final double RADIUS = 0.03;
    private static final double SLIP = 0.01;
    private static final double MAINS = 0.006;
    private static final double BELT = 0.03;

    /** A speed that is wrong by more does not come from a wrong diameter. */
    private static final double LARGEST_DIAMETER_ERROR = 0.02;

    private static final int HARMONICS = 3;

    private final TransportDescription transport;
    private final double slow;
    private final double fast;
    private final List<ExpectedLine> lines = new ArrayList<>();

    private ExpectedLines(TransportDescription transport, double slow, double fast) {
        this.transport = transport;
        this.slow = slow;
        this.fast = fast;
    }

    /**
     * The lines of a transport.
     *
     * @param nominalMmPerS nominal tape speed, or empty: then only motors, mains and belts with a
     *     rate of their own have lines
     * @param deviation measured speed over nominal, less 1. Whether a wrong speed comes from a
     *     wrong rate or from a wrong diameter is not known, so up to 2 % both are allowed for
     */
    public static List<ExpectedLine> of(
            TransportDescription transport, OptionalDouble nominalMmPerS, double deviation) {
        double nominal = nominalMmPerS.orElse(Double.NaN);
        double real = nominal * (1 + deviation);
        double other = Math.abs(deviation) <= LARGEST_DIAMETER_ERROR ? nominal : real;
        ExpectedLines expected =
                new ExpectedLines(transport, Math.min(real, other), Math.max(real, other));
        if (nominalMmPerS.isPresent()) {
            expected.addRollers();
            expected.addReel(
                    SAID.say("part.supply-reel"),
                    transport.supplyReel(),
                    ExpectedLine.Movement.FASTER);
            expected.addReel(
                    SAID.say("part.take-up-reel"),
                    transport.takeUpReel(),
                    ExpectedLine.Movement.SLOWER);
        }
        expected.addMotors();
        expected.addBelts();
        return List.copyOf(expected.lines);
    }

    private void addRollers() {
        addRoller(SAID.say("part.capstan"), transport.capstan(), DIAMETER, HARMONICS);
        addRoller(SAID.say("part.pinch-roller"), transport.pinchRoller(), RUBBER, HARMONICS);
        for (Roller idler : transport.idlers()) {
            addRoller(Range.name(idler.name(), SAID.say("part.idler")), idler, DIAMETER, 1);
        }
    }

    private void addRoller(String name, Roller roller, double tolerance, int harmonics) {
        if (roller != null && roller.diameterMm() != null) {
            double low = TransportGeometry.rotationHz(slow, roller.diameterMm());
            double high = TransportGeometry.rotationHz(fast, roller.diameterMm());
            add(name, low, high, tolerance, harmonics);
        }
    }

    private void addReel(String name, Reel reel, ExpectedLine.Movement movement) {
        if (reel != null && reel.packRadiusMm() != null) {
            double low = TransportGeometry.rotationHz(slow, 2 * reel.packRadiusMm());
            double high = TransportGeometry.rotationHz(fast, 2 * reel.leastRadiusMm());
            lines.add(new ExpectedLine(name, low * (1 - RADIUS), high * (1 + RADIUS), movement));
        }
    }

    private void addMotors() {
        for (Motor motor : transport.motors()) {
            if (motor.turnsPerSecond() != null) {
                double rate = motor.turnsPerSecond();
                add(motor.name(), rate, rate, SLIP, HARMONICS);
            }
        }
        if (transport.mainsHz() != null) {
            double mains = transport.mainsHz();
            add(SAID.say("part.mains"), mains, mains, MAINS, 1);
            add(SAID.say("part.twice-the-mains"), 2 * mains, 2 * mains, MAINS, 1);
        }
    }

    private void addBelts() {
        for (Belt belt : transport.belts()) {
            if (belt.lengthMm() != null && belt.pulleyDiameterMm() != null) {
                double rims = Math.PI * belt.pulleyDiameterMm() / belt.lengthMm();
                Double own = belt.pulleyRotationHz();
                addBelt(belt.name(), rims, own);
            }
        }
    }

    private void addBelt(String name, double perTurn, Double rotationHz) {
        Roller capstan = transport.capstan();
        if (rotationHz != null) {
            add(name, perTurn * rotationHz, perTurn * rotationHz, BELT, 1);
        } else if (capstan != null && capstan.diameterMm() != null && Double.isFinite(slow)) {
            double low = TransportGeometry.rotationHz(slow, capstan.diameterMm());
            double high = TransportGeometry.rotationHz(fast, capstan.diameterMm());
            add(name, perTurn * low, perTurn * high, BELT, 1);
        }
    }

    private void add(String name, double low, double high, double tolerance, int harmonics) {
        for (int n = 1; n <= harmonics; n++) {
            lines.add(
                    new ExpectedLine(
                            harmonic(name, n),
                            n * low * (1 - tolerance),
                            n * high * (1 + tolerance),
                            ExpectedLine.Movement.STEADY));
        }
    }

    private static String harmonic(String name, int n) {
        return switch (n) {
            case 2 -> SAID.say("harmonic.second", name);
            case 3 -> SAID.say("harmonic.third", name);
            default -> name;
        };
    }
}
