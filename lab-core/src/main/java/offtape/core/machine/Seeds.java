package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.machine.spec.MachineSpec;

/**
 * Independent random sequences, one for each purpose, all from the machine's one seed. What lies on
 * the tape is drawn alike for every replay, what the replay adds is drawn anew.
 */
final class Seeds {

    private static final long HISS = 0x68697373L;
    private static final long HUM = 0x68756dL;
    private static final long INTERFACE = 0x69666163L;
    private static final long DITHER = 0x64697468L;
    private static final long MODULATION = 0x6d6f6475L;
    private static final long MAGNET = 0x6d61676eL;
    private static final long TRANSPORT = 0x74726e73L;
    private static final long REPLAY = 0x7265706cL;

    private Seeds() {}

    static SplittableRandom transport(MachineSpec spec, Transport.Pass pass) {
        long seed = pass == Transport.Pass.WRITE ? spec.seed() : ofReplay(spec);
        return of(seed, TRANSPORT, pass.ordinal());
    }

    static SplittableRandom hiss(long seed, int channel) {
        return of(seed, HISS, channel);
    }

    static SplittableRandom magnet(long seed, int channel) {
        return of(seed, MAGNET, channel);
    }

    static SplittableRandom modulation(long seed, int channel) {
        return of(seed, MODULATION, channel);
    }

    static SplittableRandom hum(MachineSpec spec) {
        return of(ofReplay(spec), HUM, 0);
    }

    static SplittableRandom interfaceNoise(MachineSpec spec, int channel) {
        return of(ofReplay(spec), INTERFACE, channel);
    }

    static SplittableRandom dither(MachineSpec spec, int channel) {
        return of(ofReplay(spec), DITHER, channel);
    }

    /** The seed of what a replay adds; the first one's is the machine's own. */
    private static long ofReplay(MachineSpec spec) {
        return spec.replay() == 1 ? spec.seed() : of(spec.seed(), REPLAY, spec.replay()).nextLong();
    }

    // Weyl increments keep neighbouring seeds apart; SplittableRandom mixes them.
    private static SplittableRandom of(long seed, long purpose, int index) {
        SplittableRandom root = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + purpose);
        for (int i = 0; i < index; i++) {
            root.nextLong();
        }
        return root.split();
    }
}
