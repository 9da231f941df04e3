package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.MemoryAudio;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.RefusedOutputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.DiskTrouble;
import offtape.core.output.OutputFile;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.report.apply.model.MachineModel;
import offtape.report.apply.model.ModelCheck;
import offtape.report.apply.model.ModelPart;
import offtape.report.apply.model.ModelSound;

/** One file on its way through a model. */
final class PreviewRun {

    private static final Sentences SAID = Sentences.near(PreviewRun.class);

    private static final int BLOCK = 1 << 16;
    private static final int VERIFIED_SECONDS = 60;
    private static final double FULL_SCALE_DB = -0.001;
    private static final int FINE_STEPS = 100;
    private static final int COARSE_STEPS = 4;
    private static final String STAGED = "made.wav";

    private final MachineModel model;
    private final AudioSource sound;
    private final BroadcastNote note;
    private final PreviewSettings settings;
    private final Terminal terminal;
    private final Speech speech;
    private final double peakIn;
    private final List<String> notes = new ArrayList<>();
    private List<PreviewFigures.Null> nulls;
    private Double peakOutDbfs;
    private String encoding;
    private String written;
    private int stepsShown;

    PreviewRun(
            MachineModel model,
            AudioSource sound,
            BroadcastNote note,
            PreviewSettings settings,
            Terminal terminal) {
        this.model = model;
        this.sound = sound;
        this.note = note;
        this.settings = settings;
        this.terminal = terminal;
        this.speech = Speech.of(terminal);
        this.peakIn = peak();
        notes.addAll(model.notes());
    }

    private double peak() {
        double peak = 0;
        for (long at = 0; at < sound.frames(); at += BLOCK) {
            for (double[] x : sound.read(at, count(at))) {
                for (double v : x) {
                    peak = Math.max(peak, Math.abs(v));
                }
            }
        }
        return peak;
    }

    private int count(long at) {
        return (int) Math.min(BLOCK, sound.frames() - at);
    }

    /** Sets the model against a simulated machine on the beginning of the file. */
    void verify(MachineSpec machine) {
        int frames = (int) Math.min(sound.frames(), (long) VERIFIED_SECONDS * sound.sampleRateHz());
        AudioSource beginning =
                new MemoryAudio(sound.name(), sound.sampleRateHz(), sound.read(0, frames));
        terminal.progress(0, 1, speech.say("preview.through-machine"));
        nulls =
                ModelCheck.rows(model, machine, beginning, settings.levelDb()).stream()
                        .map(
                                r ->
                                        new PreviewFigures.Null(
                                                keys(r.parts()),
                                                r.depth().db(),
                                                1e6
                                                        * r.depth().delayFrames()
                                                        / sound.sampleRateHz(),
                                                r.depth().gainDb()))
                        .toList();
    }

    private static List<String> keys(Collection<ModelPart> parts) {
        return parts.stream().sorted().map(ModelPart::key).toList();
    }

    /** Writes the sound; it appears whole or not at all. */
    void write(Path out, boolean force) {
        try (OutputFile file = OutputFile.open(out, force)) {
            Path staged = file.path().resolveSibling(STAGED + ".float");
            double peak = stage(staged);
            boolean isFloat = settings.isFloat() || peak > 1;
            if (peak > 1 && !settings.isFloat()) {
                notes.add(SAID.say("beyond-full-scale"));
            }
            if (isFloat) {
                move(staged, file.path(), out);
            } else {
                convert(staged, file.path());
            }
            file.commit();
            peakOutDbfs = peak > 0 ? Decibels.ofAmplitude(peak) : null;
            encoding = isFloat ? "float-32" : "pcm-24";
            written = out.toString();
        }
    }

    private int channels() {
        return sound.channels() == 1 && settings.monoFrom() != MonoFrom.BOTH ? 1 : 2;
    }

    private double stage(Path staged) {
        AudioSource made =
                ModelSound.of(model, sound, settings.levelDb(), settings.parts(), settings.seed());
        double gain = settings.keepLevel() ? Decibels.toAmplitude(settings.levelDb()) : 1;
        double peak = 0;
        try (WavWriter wav = writer(staged, WavEncoding.FLOAT_32)) {
            for (long at = 0; at < sound.frames(); at += BLOCK) {
                double[][] block = taken(made.read(at, count(at)));
                for (double[] x : block) {
                    for (int i = 0; i < x.length; i++) {
                        x[i] *= gain;
                        peak = Math.max(peak, Math.abs(x[i]));
                    }
                }
                wav.write(block);
                showProgress(at + count(at));
            }
        }
        return peak;
    }

    /** Elsewhere than on a terminal, where each step is a line of its own, in few steps. */
    private void showProgress(long frames) {
        int steps = terminal.isInteractive() ? FINE_STEPS : COARSE_STEPS;
        int done = (int) (steps * frames / sound.frames());
        if (done > stepsShown) {
            stepsShown = done;
            terminal.progress(done, steps, speech.say("preview.through-model"));
        }
    }

    private double[][] taken(double[][] pair) {
        if (channels() == 2) {
            return pair;
        }
        return new double[][] {pair[settings.monoFrom() == MonoFrom.RIGHT ? 1 : 0]};
    }

    private WavWriter writer(Path place, WavEncoding encoding) {
        return WavWriter.create(
                place, new WavFormat(sound.sampleRateHz(), channels(), encoding), note);
    }

    private void convert(Path staged, Path place) {
        try (AudioSource made = AudioFiles.open(staged);
                WavWriter wav = writer(place, WavEncoding.PCM_24)) {
            for (long at = 0; at < sound.frames(); at += BLOCK) {
                wav.write(made.read(at, count(at)));
            }
        }
    }

    private static void move(Path staged, Path place, Path out) {
        try {
            Files.move(staged, place);
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("not-written", out, DiskTrouble.words(e)), e);
        }
    }

    /** What is told of the run. */
    PreviewFigures figures() {
        Double in = peakIn > 0 ? (Double) Decibels.ofAmplitude(peakIn) : null;
        Double sent =
                in == null ? null : (Double) (in + settings.levelDb() - model.referenceDbfs());
        boolean bends = sent != null && settings.parts().contains(ModelPart.SATURATION);
        List<String> all = new ArrayList<>(notes);
        if (in == null) {
            all.add("The file is silent: what is heard is the machine alone.");
        } else if (in > FULL_SCALE_DB) {
            all.add("The file reaches full scale: where it was clipped it stays clipped.");
        }
        return new PreviewFigures(
                sound.name(),
                written,
                model.session().machineName(),
                sound.sampleRateHz(),
                sound.frames(),
                keys(settings.parts()),
                settings.levelDb(),
                settings.keepLevel(),
                settings.seed(),
                model.referenceDbfs(),
                in,
                sent,
                bends ? (Double) model.k3Percent(sent) : null,
                bends ? (Double) model.compressionDb(sent) : null,
                peakOutDbfs,
                encoding,
                nulls,
                all);
    }
}
