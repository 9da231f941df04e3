package offtape.cli.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.StringJoiner;
import offtape.cli.sound.LoopLayer;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;

/** A desk for tests of transfers: stems, a session, and what came back. */
final class Stems {

    /** A low rate makes short work of it. */
    static final int RATE = 16_000;

    private final Path root;

    Stems(Path root) {
        this.root = root;
        session("session", -18.0);
    }

    Path path(String name) {
        return root.resolve(name);
    }

    Path out() {
        return path("out");
    }

    Path write(String name, byte[] content) {
        try {
            Files.createDirectories(path(name).getParent());
            return Files.write(path(name), content);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    Path stem(String name, double[]... sound) {
        return write(name, Wav.PCM_24.of(RATE, sound));
    }

    /** Noise in whole steps of 24 bits. */
    static double[] noise(int frames, double peak) {
        double[] x = new Random(frames).doubles(frames, -peak, peak).toArray();
        Arrays.setAll(x, i -> Math.rint(x[i] * 8_388_608) / 8_388_608);
        return x;
    }

    /** A tone without ends that leave its band. */
    static double[] tone(double hz, double peak, int frames) {
        double[] x = new double[frames];
        Arrays.setAll(
                x,
                i -> {
                    double edge = Math.min(1, Math.min(i, frames - 1 - i) / 400.0);
                    double swell = 0.5 - 0.5 * Math.cos(Math.PI * edge);
                    return peak * swell * Math.sin(2 * Math.PI * hz * i / RATE);
                });
        return x;
    }

    /**
     * A session of a machine y = x − a·x³ with an a for each channel. A sine of peak A leaves with
     * a fundamental of A − ¾aA³ and a third harmonic of ¼aA³: K3 = ¼aA² / (1 − ¾aA²).
     */
    Path session(String name, Double referenceDbfs, double... a) {
        StringJoiner ladders = new StringJoiner(",");
        for (int c = 0; c < a.length; c++) {
            StringJoiner steps = new StringJoiner(",");
            for (int db = -20; db <= 14; db += 2) {
                double square = a[c] * Math.pow(10, (db - 18) / 10.0);
                double k3 = 100 * 0.25 * square / (1 - 0.75 * square);
                steps.add(
                        String.format(
                                Locale.ROOT,
                                "{\"recordLevelDb\":%d,\"k3Percent\":%.12g,\"leftOut\":false,"
                                        + "\"limitedByNoise\":false}",
                                db,
                                k3));
            }
            ladders.add(
                    String.format(
                            "{\"channel\":\"%s\",\"frequencyHz\":1000,\"steps\":[%s]}",
                            c == 0 ? "left" : "right", steps));
        }
        String head = referenceDbfs == null ? "" : "\"referenceDbfs\":" + referenceDbfs;
        return write(
                        name + "/results.json",
                        ("{\"format\":\"offtape-results\",\"version\":1,\"session\":{"
                                        + head
                                        + "},\"distortion\":["
                                        + ladders
                                        + "]}")
                                .getBytes(StandardCharsets.UTF_8))
                .getParent();
    }

    Tool.Outcome transfer(LoopLayer layer, Object... more) {
        return transferTo(out(), layer, more);
    }

    Tool.Outcome transferTo(Path out, LoopLayer layer, Object... more) {
        return transferFor("0.5", out, layer, more);
    }

    Tool.Outcome transferFor(String tail, Path out, LoopLayer layer, Object... more) {
        Object[] line =
                Lab.line(
                        "transfer",
                        "--session",
                        path("session"),
                        "--out",
                        out,
                        "--no-settings",
                        "--tail",
                        tail);
        return Tool.run(layer.layers(), Lab.line(line, more));
    }

    JsonNode log() {
        try {
            return new ObjectMapper().readTree(out().resolve("transfer.json").toFile());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The entry of a return. */
    JsonNode entry(String file) {
        for (JsonNode e : log().get("stems")) {
            if (e.get("file").asText().equals(file)) {
                return e;
            }
        }
        throw new IllegalStateException("no entry of " + file);
    }

    double[][] back(String name) {
        try (AudioFile sound = AudioFiles.open(out().resolve(name))) {
            return sound.read(0, (int) sound.frames());
        }
    }
}
