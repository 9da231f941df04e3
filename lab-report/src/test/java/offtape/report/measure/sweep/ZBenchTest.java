package offtape.report.measure.sweep;

import org.junit.jupiter.api.Test;

class ZBenchTest {
    static double cpu() {
        return ((com.sun.management.OperatingSystemMXBean)
                                java.lang.management.ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e6;
    }

    @Test
    void time() {
        SweepBench b = SweepBench.of("\"hiss\": {\"levelDb\": -58}", 12, -20, 0);
        for (int i = 0; i < 6; i++) {
            double c = cpu();
            b.followed(0);
            b.followed(1);
            double d = cpu();
            HarmonicFollower.followLoudest(b.ret());
            double e = cpu();
            System.out.println("follow both cpu " + (d - c) + " harmonics " + (e - d));
        }
    }

    @Test
    void harm() {
        for (String tr :
                new String[] {
                    "\"speedDeviationPercent\": 0",
                    "\"components\": [{\"frequencyHz\": 9.55, \"peakPercent\": 0.2}]",
                    "\"randomFlutter\": {\"rmsPercent\": 0.3, \"lowHz\": 0.5, \"highHz\": 120}",
                    "\"motion\": {\"recorded\": \"transport-a\"}"
                }) {
            SweepBench b =
                    SweepBench.of(
                            "\"transport\": {"
                                    + tr
                                    + "}, \"saturation\": {\"kind\": \"tanh\", \"levelAtK3ThreePercentDb\": 6.5, \"secondHarmonicPercent\": 0.3, \"emphasisMicroseconds\": 35}, \"electronics\": {\"lowerEdgeHz\": 28, \"lowerOrder\": 2, \"upperEdgeHz\": 17000}, \"hiss\": {\"levelDb\": -58}",
                            12,
                            -20,
                            0);
            var r = b.response(1, 0);
            for (var h : r.harmonics())
                for (var p : h.points())
                    System.out.printf(
                            "%d %8.1f  %s  true %.4f  err %.2f %%  floor %.4f%n",
                            h.order(),
                            p.frequencyHz(),
                            p.percent(),
                            b.run().tone(0).harmonicPercent(h.order(), p.frequencyHz(), 0),
                            p.percent() == null
                                    ? 0
                                    : 100
                                            * (p.percent()
                                                            / b.run()
                                                                    .tone(0)
                                                                    .harmonicPercent(
                                                                            h.order(),
                                                                            p.frequencyHz(),
                                                                            0)
                                                    - 1),
                            p.floorPercent());
            System.out.println(
                    r.levelDependence().lossAt10kHz() + " " + r.levelDependence().oneDbLossFrom());
            System.out.println(r.contour());
            System.out.println(r.bands());
            System.out.println(b.response(0, 0).contour());
        }
    }
}
