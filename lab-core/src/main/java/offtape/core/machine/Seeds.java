package offtape.core.machine;

import java.util.SplittableRandom;

/** Independent random sequences, one for each purpose, all from the machine's one seed. */
final class Seeds {

    private static final long HISS = 0x68697373L;
    private static final long HUM = 0x68756dL;
    private static final long INTERFACE = 0x69666163L;
    private static final long DITHER = 0x64697468L;
    private static final long MODULATION = 0x6d6f6475L;
    private static final long TRANSPORT = 0x74726e73L;

    private Seeds() {}

    static SplittableRandom transport(long seed, Transport.Pass pass) {
        return of(seed, TRANSPORT, pass.ordinal());
    }

    static SplittableRandom hiss(long seed, int channel) {
        return of(seed, HISS, channel);
    }

    static SplittableRandom modulation(long seed, int channel) {
        return of(seed, MODULATION, channel);
    }

    static SplittableRandom hum(long seed) {
        return of(seed, HUM, 0);
    }

    static SplittableRandom interfaceNoise(long seed, int channel) {
        return of(seed, INTERFACE, channel);
    }

    static SplittableRandom dither(long seed, int channel) {
        return of(seed, DITHER, channel);
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
