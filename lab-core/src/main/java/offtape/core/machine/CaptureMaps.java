package offtape.core.machine;

import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.TransportSpec;

/** Makes the map of a capture mode, with its motions tabulated as far as a return reaches. */
final class CaptureMaps {

    private static final double MARGIN_SECONDS = 5;

    private CaptureMaps() {}

    /**
     * The map of a machine.
     *
     * @param offsetSeconds machine time 0 in the return
     * @param programmeSeconds length of the programme
     */
    static CaptureMap of(MachineSpec spec, double offsetSeconds, double programmeSeconds) {
        double lag = spec.heads().spacingMm() / spec.tapeSpeedMmPerS();
        double from = -Math.max(0, offsetSeconds) - 2 * lag - MARGIN_SECONDS;
        double tail = Math.max(0, spec.recorder().tailSeconds());
        double span = programmeSeconds + tail + 2 * lag + MARGIN_SECONDS;
        double to = span / (1 - slowest(spec.transport(), span));
        return switch (spec.mode()) {
            case LOOPBACK -> CaptureMap.IDENTITY;
            case REFERENCE_TAPE -> new CaptureMap(Motion.PERFECT, read(spec, from, to), 0);
            case TWO_PASS -> {
                Motion write = Transport.motion(spec, Transport.Pass.WRITE, from, to);
                yield new CaptureMap(write, read(spec, from, to), 0);
            }
            case OFF_TAPE -> {
                Motion both = read(spec, from, to);
                yield new CaptureMap(both, both, lag);
            }
        };
    }

    private static Motion read(MachineSpec spec, double from, double to) {
        return Transport.motion(spec, Transport.Pass.READ, from, to);
    }

    // A slow transport takes longer than the programme; at most 45 % are provided for.
    private static double slowest(TransportSpec transport, double span) {
        double constant = Math.max(0, -transport.constantPercent() / 100);
        double drift = Math.max(0, -transport.changePercentPerMinute() / 100 * span / 60);
        return Math.min(0.45, constant + drift + 0.01);
    }
}
