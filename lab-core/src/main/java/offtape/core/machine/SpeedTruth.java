package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.spec.ComponentSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.ReelSpec;
import offtape.core.standard.TransportGeometry;
import offtape.core.transport.CaptureMode;

/**
 * Speed while the programme is heard, percent of nominal. The deviations themselves over time are
 * in {@link TimeMap}.
 *
 * @param returnMean mean deviation heard in the return, the recorder's clock included
 * @param returnRms root mean square about that mean, not limited in band
 * @param transportMean mean deviation of the transport itself
 * @param transportRms root mean square about that mean, drift included
 * @param components steady lines, each multiple of a part's rate on its own, and reels
 * @param writtenRms root mean square of the deviation with which the tape was written, drift
 *     included; null unless it was written in a pass before
 */
public record SpeedTruth(
        double returnMean,
        double returnRms,
        double transportMean,
        double transportRms,
        List<Component> components,
        Double writtenRms) {

    private static final double SAMPLES_PER_SECOND = 1000;

    static SpeedTruth of(MachineSpec spec, TimeMap map) {
        double first = map.returnSeconds(0);
        double last = map.returnSeconds(map.programmeLengthSeconds());
        int count = Math.max(2, (int) ((last - first) * SAMPLES_PER_SECOND));
        double[] heard = new double[count];
        double[] own = new double[count];
        double[] written = new double[count];
        for (int i = 0; i < count; i++) {
            double t = first + (i + 0.5) * (last - first) / count;
            heard[i] = 100 * map.returnDeviation(t);
            own[i] = 100 * map.transportDeviation(t);
            written[i] = 100 * map.writtenDeviation(t);
        }
        boolean tape = spec.mode() != CaptureMode.LOOPBACK;
        return new SpeedTruth(
                100 * (map.meanRate() - 1),
                rms(heard),
                100 * map.meanTransportDeviation(),
                rms(own),
                tape ? components(spec, map) : List.of(),
                spec.mode() == CaptureMode.TWO_PASS ? (Double) rms(written) : null);
    }

    private static double rms(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double mean = sum / values.length;
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return Math.sqrt(squares / values.length);
    }

    private static List<Component> components(MachineSpec spec, TimeMap map) {
        List<Component> list = new ArrayList<>();
        double speed = spec.tapeSpeedMmPerS();
        for (ComponentSpec c : spec.transport().components()) {
            for (int n = 1; n <= c.harmonics().size(); n++) {
                if (n == 1 || c.peakPercent(n) > 0) {
                    double rate = n * c.rateHz(speed);
                    list.add(component(spec, map, c.name(), rate, c.peakPercent(n)));
                }
            }
        }
        if (spec.transport().reels() != null) {
            double thickness = spec.transport().reels().tapeThicknessMicrometres() / 1000;
            double half = map.programmeLengthSeconds() / 2;
            ReelSpec supply = spec.transport().reels().supply();
            ReelSpec takeUp = spec.transport().reels().takeUp();
            if (supply != null) {
                double rate = reelRateHz(supply, speed, -thickness, half);
                list.add(component(spec, map, "supply reel", rate, supply.peakPercent()));
            }
            if (takeUp != null) {
                double rate = reelRateHz(takeUp, speed, thickness, half);
                list.add(component(spec, map, "take-up reel", rate, takeUp.peakPercent()));
            }
        }
        return list;
    }

    private static double reelRateHz(
            ReelSpec reel, double speed, double thicknessMm, double seconds) {
        double radius =
                Math.sqrt(
                        reel.radiusMm() * reel.radiusMm()
                                + thicknessMm * speed * seconds / Math.PI);
        return TransportGeometry.rotationHz(speed, 2 * radius);
    }

    // Heads a time τ apart hear (1 + δ(t))/(1 + δ(t − τ)) − 1: 2·|sin πfτ| times the line re the
    // mean speed, to first order.
    private static Component component(
            MachineSpec spec, TimeMap map, String name, double rateHz, double peakPercent) {
        Double heard =
                switch (spec.mode()) {
                    case REFERENCE_TAPE -> Double.valueOf(peakPercent);
                    case OFF_TAPE -> {
                        double speed = 1 + map.meanTransportDeviation();
                        double tau = map.lagSeconds() / speed;
                        double comb = 2 * Math.abs(Math.sin(Math.PI * rateHz * tau));
                        yield comb * peakPercent / speed;
                    }
                    case TWO_PASS, LOOPBACK -> null;
                };
        return new Component(name, rateHz, peakPercent, heard);
    }

    /**
     * A steady line of the deviation.
     *
     * @param name the part, or null; multiples of its rate have the same
     * @param frequencyHz its rate; of a reel, in the middle of the programme
     * @param transportPeakPercent peak deviation of the transport
     * @param returnPeakPercent peak deviation in the return, to first order; null where it depends
     *     on how two passes fell together
     */
    public record Component(
            String name,
            double frequencyHz,
            double transportPeakPercent,
            Double returnPeakPercent) {}
}
