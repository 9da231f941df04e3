package offtape.report.measure.transport;

import java.util.List;
import java.util.Random;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.result.SpeedComponent;

/**
 * A transport drawn at random: heads 20 to 700 ms apart, random motion of 0.003 to 0.1 % whose
 * density falls from a knee between 2 and 10 Hz on and ends between 40 and 140 Hz, up to five lines
 * of 0.005 to 0.1 % anywhere from 0.4 to 48 Hz (also where both heads hear alike), hiss of −68 to
 * −48 dB.
 *
 * @param motion the motion
 * @param delaySeconds mean time between the heads
 * @param heard its return
 */
record DrawnTransport(DrawnMotion motion, double delaySeconds, HeardDeviation heard) {

    static final double RATE_HZ = 500;

    static DrawnTransport of(int number) {
        Random random = new Random(number * 0x9E3779B97F4A7C15L ^ 0x5DEECE66DL);
        double delay = 0.02 * Math.pow(35, random.nextDouble());
        double seconds = 20 + 10 * random.nextDouble();
        DrawnMotion motion = new DrawnMotion(seconds, RATE_HZ, delay, number);
        addRandom(motion, random);
        int lines = random.nextInt(6);
        for (int l = 0; l < lines; l++) {
            motion.line(
                    0.4 * Math.pow(120, random.nextDouble()),
                    0.1 * Math.pow(10, -1.3 * random.nextDouble()));
        }
        double hiss = MadeReturn.HISS * Math.pow(10, 2 * random.nextDouble() - 1);
        return new DrawnTransport(motion, delay, motion.heard(delay, hiss));
    }

    private static void addRandom(DrawnMotion motion, Random random) {
        double edge = 40 + 100 * random.nextDouble();
        double rms = 0.1 * Math.pow(10, -1.5 * random.nextDouble());
        double knee = 2 + 8 * random.nextDouble();
        double power = 0;
        for (double f = 0.25; f < edge; f += 0.25) {
            power += 0.25 * shape(f, knee);
        }
        double density = rms * rms / power;
        motion.noise(f -> f < 0.2 || f > edge ? 0 : density * shape(f, knee));
    }

    private static double shape(double f, double knee) {
        return 1 / (1 + Math.pow(f / knee, 1.5));
    }

    /** The lines of the return in the words of the results. */
    static List<SpeedComponent> lines(HeardDeviation heard) {
        return heard.lines().stream()
                .map(
                        l ->
                                SpeedComponent.steady(
                                        l.startHz(),
                                        l.peakPercent(),
                                        null,
                                        l.hzUncertainty(),
                                        l.peakUncertainty()))
                .toList();
    }
}
