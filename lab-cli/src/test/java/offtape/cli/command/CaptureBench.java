package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.cli.settings.SettingsFile;
import offtape.cli.sound.SoundLayers;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.output.OutputFolder;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeWriter;

/** A folder with a programme of one second, and made-up devices that it is captured with. */
final class CaptureBench {

    static final int RATE = 48_000;

    /** Silence that the command plays first, half a second. */
    static final int LEAD = RATE / 2;

    /** Level of the reference, and of the tone. */
    static final double PEAK_DBFS = -18;

    private final Path folder;

    final MadeUpLayer layer = new MadeUpLayer("loop");

    CaptureBench(Path folder) {
        this.folder = folder;
        Cue tone = new Cue.Tone("tone", ChannelSet.BOTH, 4800, RATE / 2, 1000, 0);
        CueSheet sheet = new CueSheet(RATE, RATE, PEAK_DBFS, 190.5, List.of(tone));
        try (OutputFolder out = OutputFolder.open(path("programme"), false)) {
            ProgrammeWriter.write(sheet, out);
            out.commit();
        }
    }

    Path path(String name) {
        return folder.resolve(name);
    }

    /** Captures the programme into return.wav, with more words at the end of the line. */
    Tool.Outcome capture(Object... more) {
        return Tool.run(layers(), line(more));
    }

    /** The same with settings that are remembered. */
    Tool.Outcome remembering(Object... more) {
        return Tool.run(layers(), settings(), line(more));
    }

    SettingsFile settings() {
        return SettingsFile.at(path("settings/settings.json"));
    }

    private SoundLayers layers() {
        return new SoundLayers(List.of(layer));
    }

    private Object[] line(Object... more) {
        return Lab.line(
                Lab.line("capture", "--programme", path("programme"), "--out", path("return.wav")),
                more);
    }

    /** Some frames of the recording or of another file. */
    double[][] read(String name, int from, int frames) {
        try (AudioFile file = AudioFiles.open(path(name))) {
            return file.read(from, frames);
        }
    }

    long frames(String name) {
        try (AudioFile file = AudioFiles.open(path(name))) {
            return file.frames();
        }
    }

    /** What lies in the folder, hidden things too. */
    Set<String> names() {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(p -> p.getFileName().toString()).collect(Collectors.toSet());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
