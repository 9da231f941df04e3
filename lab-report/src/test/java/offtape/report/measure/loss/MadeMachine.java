package offtape.report.measure.loss;

import java.util.Random;
import offtape.core.standard.Iec60094;

/**
 * A machine whose losses are known. What a cause takes is written down from the formulas here,
 * apart from the classes that are tried.
 *
 * @param speed tape speed, mm/s
 * @param spacing µm
 * @param gap optical, µm
 * @param minutes of azimuth
 * @param thickness µm
 * @param edgeHz of a Butterworth low-pass of second order; infinite for none
 * @param tapeUs time constant of the tape
 * @param replayUs time constant in replay
 * @param known whether the delay between the channels and the tracks are known
 */
record MadeMachine(
        double speed,
        double spacing,
        double gap,
        double minutes,
        double thickness,
        double edgeHz,
        double tapeUs,
        double replayUs,
        boolean known) {

    private static final double WIDTH_UM = 2000;
    private static final double TRACKS_UM = 4000;

    static MadeMachine draw(Random r) {
        double speed = new double[] {47.625, 95.25, 190.5, 381}[r.nextInt(4)];
        double scale = Math.sqrt(speed / 190.5);
        double[] constants =
                Iec60094.equalisations(speed).stream()
                        .mapToDouble(Iec60094.Equalisation::highMicroseconds)
                        .distinct()
                        .toArray();
        int tape = r.nextInt(constants.length);
        int replay = r.nextDouble() < 0.15 ? r.nextInt(constants.length) : tape;
        return new MadeMachine(
                speed,
                r.nextBoolean() ? 0 : scale * (0.1 + 2 * r.nextDouble()),
                r.nextBoolean() ? 0 : scale * (1 + 4 * r.nextDouble()),
                r.nextBoolean() ? 0 : scale * (12 * r.nextDouble() - 6),
                r.nextBoolean() ? 0 : scale * (0.3 + 6 * r.nextDouble()),
                r.nextBoolean() ? Double.POSITIVE_INFINITY : 9000 + 15_000 * r.nextDouble(),
                constants[tape],
                constants[replay],
                r.nextBoolean());
    }

    double db(double hz) {
        double lambda = 1000 * speed / hz;
        double k = 2 * Math.PI * thickness / lambda;
        double w = 2e-6 * Math.PI * hz;
        return -54.575 * spacing / lambda
                + 20 * Math.log10(sinc(1.11 * gap / lambda) * sinc(productUm() / lambda))
                + (k == 0 ? 0 : 20 * Math.log10((1 - Math.exp(-k)) / k))
                - 10 * Math.log10(1 + Math.pow(hz / edgeHz, 4))
                + 10 * Math.log10((1 + Math.pow(w * replayUs, 2)) / (1 + Math.pow(w * tapeUs, 2)));
    }

    private static double sinc(double waves) {
        double x = Math.PI * waves;
        return x == 0 ? 1 : Math.abs(Math.sin(x) / x);
    }

    /** Track width times tan α. */
    double productUm() {
        return WIDTH_UM * Math.tan(Math.toRadians(Math.abs(minutes) / 60));
    }

    /** What the delay between the channels shows; the gaps stand 1.25 µm out of line, rms. */
    double delayUs(Random r) {
        double late = TRACKS_UM * Math.tan(Math.toRadians(minutes / 60)) + 1.25 * r.nextGaussian();
        return 1000 * late / speed;
    }

    /** The truth about a cause as results tell it. */
    double truth(String cause) {
        return switch (cause) {
            case "spacing" -> spacing;
            case "gap" -> gap;
            case "azimuth" -> known ? Math.abs(minutes) : productUm();
            case "gap-or-azimuth" -> Math.hypot(1.11 * gap, productUm());
            case "thickness" -> thickness;
            case "upper-edge" -> edgeHz;
            default -> {
                double w = 2e-6 * Math.PI;
                yield shelf(10_000 * w) - shelf(1000 * w);
            }
        };
    }

    private double shelf(double w) {
        return 10 * Math.log10((1 + Math.pow(w * replayUs, 2)) / (1 + Math.pow(w * tapeUs, 2)));
    }
}
