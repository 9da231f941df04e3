package offtape.report.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;

/**
 * A return as files of 24 bit in a folder of their own.
 *
 * @param wav the return as WAV
 * @param flac the same samples as FLAC
 */
record SimulatedFiles(Path wav, Path flac) implements AutoCloseable {

    private static final int BLOCK = 1 << 16;

    /** Writes both; {@link #close} removes them. */
    static SimulatedFiles write(AudioSource sound) {
        try {
            Path folder = Files.createTempDirectory("offtape-benchmark");
            Path wav = folder.resolve("return.wav");
            Path flac = folder.resolve("return.flac");
            WavFormat format = new WavFormat(sound.sampleRateHz(), 2, WavEncoding.PCM_24);
            try (WavWriter writer = WavWriter.create(wav, format)) {
                writer.write(sound.read(0, Math.toIntExact(sound.frames())));
            }
            try (AudioSource written = AudioFiles.open(wav)) {
                Files.write(flac, new FlacStream(written).bytes());
            }
            return new SimulatedFiles(wav, flac);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All samples of a file, one array a channel, read in blocks as the measures read. */
    static double[][] samples(Path file) {
        try (AudioSource sound = AudioFiles.open(file)) {
            int frames = Math.toIntExact(sound.frames());
            double[][] all = new double[sound.channels()][frames];
            for (int at = 0; at < frames; at += BLOCK) {
                double[][] block = sound.read(at, Math.min(BLOCK, frames - at));
                for (int c = 0; c < all.length; c++) {
                    System.arraycopy(block[c], 0, all[c], at, block[c].length);
                }
            }
            return all;
        }
    }

    @Override
    public void close() {
        try {
            Files.delete(wav);
            Files.delete(flac);
            Files.delete(wav.getParent());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
