package offtape.cli.command;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Returns of the small programme of which something is wrong in the sound, and a tone of seven
 * seconds in files that can be read all the same, by name.
 */
final class BadReturns {

    private static final int SECOND = Mini.RATE;

    private final Map<String, Function<Lab, Path>> all = new TreeMap<>();

    BadReturns() {
        put("dc-only", () -> both(constant(0.5, 25 * SECOND)));
        put("all-zero", () -> both(new double[25 * SECOND]));
        put("square", () -> both(square()));
        put(
                "left-dead",
                () -> new double[][] {Mini.sound()[0], new double[Mini.sound()[0].length]});
        put("start-cut", () -> cut(SECOND, Mini.sound()[0].length));
        put("end-cut", () -> cut(0, 16 * SECOND));
        put("twice", BadReturns::twice);
        put("backwards", BadReturns::backwards);
        all.put(
                "double-speed",
                l -> l.file("double-speed.wav", Wav.PCM_24.of(2 * SECOND, Mini.sound())));
        all.put(
                "foreign-clock",
                l -> l.file("foreign-clock.wav", Wav.PCM_24.of(48_048, Mini.sound())));
        all.put("float-nan", l -> floats(l, "float-nan.wav", Double.NaN));
        all.put("float-infinite", l -> floats(l, "float-infinite.wav", Double.POSITIVE_INFINITY));
        all.put(
                "float-denormal",
                l ->
                        l.file(
                                "float-denormal.wav",
                                Wav.FLOAT_32.of(SECOND, both(constant(1e-42, 25 * SECOND)))));
        all.put("rf64-without-sizes", BadReturns::withoutSizes);
        all.put("odd-chunk", BadReturns::withOddChunk);
        all.put(
                "sound-size-lies",
                l ->
                        l.file(
                                "sound-size-lies.wav",
                                Lab.patched(good(), Wav.DATA_SIZE_OFFSET, 0x7FFF_FFFE)));
        all.put("half-a-frame", l -> l.file("half-a-frame.wav", halfAFrame()));
    }

    /** Names and what makes their files. */
    Map<String, Function<Lab, Path>> all() {
        return all;
    }

    private void put(String name, Supplier<double[][]> sound) {
        all.put(name, l -> l.wav(name + ".wav", sound.get()));
    }

    private static byte[] good() {
        return Wav.PCM_24.of(SECOND, both(Lab.tone(3150, 0.1, 7)));
    }

    private static double[][] both(double[] x) {
        return new double[][] {x, x};
    }

    private static double[] constant(double value, int frames) {
        double[] x = new double[frames];
        Arrays.fill(x, value);
        return x;
    }

    private static double[] square() {
        double[] x = new double[25 * SECOND];
        Arrays.setAll(x, i -> i / 24 % 2 == 0 ? 1 : -1);
        return x;
    }

    private static double[][] cut(int from, int to) {
        return Arrays.stream(Mini.sound())
                .map(x -> Arrays.copyOfRange(x, from, to))
                .toArray(double[][]::new);
    }

    private static double[][] twice() {
        return Arrays.stream(Mini.sound())
                .map(
                        x -> {
                            double[] two = Arrays.copyOf(x, 2 * x.length);
                            System.arraycopy(x, 0, two, x.length, x.length);
                            return two;
                        })
                .toArray(double[][]::new);
    }

    private static double[][] backwards() {
        return Arrays.stream(Mini.sound())
                .map(
                        x -> {
                            double[] back = new double[x.length];
                            Arrays.setAll(back, i -> x[x.length - 1 - i]);
                            return back;
                        })
                .toArray(double[][]::new);
    }

    private static Path floats(Lab l, String name, double odd) {
        double[] x = Mini.sound()[0];
        x[10 * SECOND] = odd;
        return l.file(name, Wav.FLOAT_32.of(SECOND, x, x));
    }

    /** Its last byte is missing, and its header knows. */
    private static byte[] halfAFrame() {
        byte[] cut = Arrays.copyOf(good(), good().length - 1);
        return Lab.patched(cut, Wav.DATA_SIZE_OFFSET, cut.length - Wav.DATA_OFFSET);
    }

    /** The outer mark says that long sizes follow, and none do. */
    private static Path withoutSizes(Lab l) {
        byte[] bytes = Lab.patched(good(), Wav.DATA_SIZE_OFFSET, -1);
        bytes[1] = 'F';
        bytes[2] = '6';
        bytes[3] = '4';
        bytes[0] = 'R';
        return l.file("rf64-without-sizes.wav", bytes);
    }

    /** A chunk of three bytes and its filler between format and sound. */
    private static Path withOddChunk(Lab l) {
        byte[] good = good();
        byte[] with = new byte[good.length + 12];
        System.arraycopy(good, 0, with, 0, 36);
        System.arraycopy(
                new byte[] {'n', 'o', 't', 'e', 3, 0, 0, 0, 'a', 'b', 'c', 0}, 0, with, 36, 12);
        System.arraycopy(good, 36, with, 48, good.length - 36);
        return l.file("odd-chunk.wav", with);
    }
}
