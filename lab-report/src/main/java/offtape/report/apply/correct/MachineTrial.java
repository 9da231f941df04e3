package offtape.report.apply.correct;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import offtape.core.filter.ConvolvedSound;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OwnersOnly;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.measure.Measurement;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Tries a correction on a simulated machine. */
final class MachineTrial {

    private static final Sentences SAID = Sentences.near(MachineTrial.class);

    private static final String RETURN = "return.wav";
    private static final double FROM_HZ = 40;
    private static final double TO_HZ = 15_000;

    private final Correction correction;
    private final Programme programme;
    private final MachineSpec spec;
    private final FilterFile filter;

    private MachineTrial(
            Correction correction, FilterFile filter, Programme programme, MachineSpec spec) {
        this.correction = correction;
        this.programme = programme;
        this.spec = spec;
        this.filter = filter;
    }

    /**
     * Passes a programme both ways and measures what returns.
     *
     * @param filter of the programme's sample rate
     * @param name of the machine's description
     */
    static Verification of(
            Correction correction,
            FilterFile filter,
            Programme programme,
            MachineSpec spec,
            String name) {
        MachineTrial trial = new MachineTrial(correction, filter, programme, spec);
        double lowerBy = filter.peakGainDb();
        double gain = Decibels.toAmplitude(-lowerBy);
        double[][] quieter =
                Arrays.stream(filter.response())
                        .map(h -> Arrays.stream(h).map(x -> gain * x).toArray())
                        .toArray(double[][]::new);
        // the same level on the tape either way, so that its compression differs in nothing else
        AudioSource plain = new ConvolvedSound(programme.audio(), new double[][] {{gain}});
        Results before =
                trial.measured(new ConvolvedSound(programme.audio(), quieter), sound -> sound);
        Results after =
                trial.measured(plain, sound -> new ConvolvedSound(sound, filter.response()));
        return new Verification(
                name,
                lowerBy,
                correction.channels().stream().map(c -> trial.channel(c, before, after)).toList());
    }

    private Results measured(AudioSource played, Function<AudioSource, AudioSource> behind) {
        Path folder = null;
        try {
            folder = OwnersOnly.temporary();
            Path wav = folder.resolve(RETURN);
            play(played, wav);
            try (AudioFile sound = AudioFiles.open(wav)) {
                Session session = new Session(null, null, null, null, "", null, "", "");
                return Measurement.run(
                        programme,
                        behind.apply(sound),
                        session,
                        Capture.of(spec.mode()),
                        List.of());
            }
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("trial.not-kept"), e);
        } finally {
            delete(folder);
        }
    }

    private static void delete(Path folder) {
        try {
            if (folder != null) {
                Files.deleteIfExists(folder.resolve(RETURN));
                Files.deleteIfExists(folder);
            }
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("trial.not-removed", folder), e);
        }
    }

    private void play(AudioSource played, Path wav) {
        MachineRun run =
                SimulatedMachine.of(spec)
                        .run(
                                played.sampleRateHz(),
                                played.frames(),
                                programme.sheet().referenceDbfs(),
                                played.sampleRateHz());
        WavFormat format = new WavFormat(run.sampleRateHz(), 2, WavEncoding.FLOAT_32);
        try (WavWriter writer = WavWriter.create(wav, format)) {
            run.play(
                    played,
                    (block, count) ->
                            writer.write(
                                    new double[][] {
                                        Arrays.copyOf(block[0], count),
                                        Arrays.copyOf(block[1], count)
                                    }));
        }
    }

    private Verification.Channel channel(ChannelCorrection c, Results before, Results after) {
        Response pre = quietest(before, c.channel());
        Response post = quietest(after, c.channel());
        double fromHz = Math.max(FROM_HZ, c.metFromHz());
        double toHz = Math.min(TO_HZ, c.metToHz());
        Curve target = new Curve(c.frequencyHz(), c.targetDb());
        double[] hz = pre.frequencyHz();
        int[] inside =
                IntStream.range(0, hz.length)
                        .filter(i -> hz[i] >= fromHz && hz[i] <= toHz)
                        .toArray();
        double[] off =
                Arrays.stream(inside)
                        .mapToDouble(i -> pre.magnitudeDb()[i] - target.at(hz[i]))
                        .toArray();
        int worst =
                IntStream.range(0, off.length)
                        .boxed()
                        .max(Comparator.comparingDouble(i -> Math.abs(off[i])))
                        .orElseThrow();
        NoiseChange said = correction.noiseOf(c.channel()).orElseThrow();
        return new Verification.Channel(
                c.channel(),
                fromHz,
                toHz,
                Math.abs(off[worst]),
                hz[inside[worst]],
                Math.sqrt(Arrays.stream(off).map(x -> x * x).average().orElse(0)),
                worstDb(post, target, fromHz, toHz),
                said.aWeighted(),
                change(noise(before, c).aWeighted(), noise(after, c).aWeighted()),
                said.unweighted(),
                change(noise(before, c).unweighted(), noise(after, c).unweighted()),
                hz,
                pre.magnitudeDb());
    }

    private static double worstDb(Response r, Curve target, double fromHz, double toHz) {
        return IntStream.range(0, r.frequencyHz().length)
                .filter(i -> r.frequencyHz()[i] >= fromHz && r.frequencyHz()[i] <= toHz)
                .mapToDouble(i -> Math.abs(r.magnitudeDb()[i] - target.at(r.frequencyHz()[i])))
                .max()
                .orElse(0);
    }

    private static Response quietest(Results results, String channel) {
        return results.response().stream()
                .filter(r -> r.channel().equals(channel) && r.frequencyHz().length > 0)
                .min(Comparator.comparingDouble(Response::levelDb))
                .orElseThrow(() -> new UnusableInputException(SAID.say("trial.no-sweep", channel)));
    }

    private static Noise noise(Results results, ChannelCorrection c) {
        return results.noise().stream()
                .filter(n -> n.channel().equals(c.channel()))
                .findFirst()
                .orElseThrow();
    }

    private static Quantity change(Quantity before, Quantity after) {
        if (!before.isKnown() || !after.isKnown()) {
            return before.isKnown() ? after : before;
        }
        return Quantity.known(
                after.value() - before.value(),
                "dB",
                Math.hypot(before.uncertainty(), after.uncertainty()));
    }
}
