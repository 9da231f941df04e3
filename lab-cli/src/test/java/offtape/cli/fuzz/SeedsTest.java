package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import offtape.cli.batch.BatchList;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.CueSheetJson;
import offtape.core.tape.ToneList;
import offtape.core.transport.TransportDescription;
import offtape.report.cost.Economics;
import offtape.report.judge.LimitSet;
import offtape.report.result.LadderSession;
import offtape.report.result.LoopbackSession;
import offtape.report.result.ResultsReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The sound seeds are taken, so that what is tried from them comes further than the door. */
final class SeedsTest {

    static Stream<Arguments> seeds() {
        return Stream.of(
                        sounds(
                                "Wav",
                                "sixteen-bits.wav, eight-bits.wav, twenty-four-bits.wav,"
                                        + " thirty-two-bits.wav, float.wav, double.wav,"
                                        + " extended-header.wav, extended-float.wav, rf64.wav,"
                                        + " bw64-table.wav, odd-chunks.wav, unfinished.wav"),
                        sounds(
                                "Aiff",
                                "sixteen-bits.aiff, twenty-bits.aiff, sound-first.aiff, plain.aifc,"
                                        + " little-first.aifc, float.aifc, double.aifc,"
                                        + " thirty-two-bits.aifc"),
                        sounds(
                                "Flac",
                                "verbatim.flac, constant-stereo.flac, differences.flac,"
                                        + " fixed-0.flac, fixed-2.flac, fixed-3.flac, fixed-4.flac,"
                                        + " predicted.flac, escaped.flac, left-side.flac,"
                                        + " side-right.flac, mid-side.flac, tag-before.flac,"
                                        + " comments-and-padding.flac, thirty-two-bits.flac,"
                                        + " variable.flac, eight-channels.flac"),
                        Stream.of(
                                seed("CueSheet", "every-kind.json", CueSheetJson::read),
                                seed("CueSheet", "marked.json", CueSheetJson::read),
                                seed("Results", "session.json", ResultsReader::read),
                                seed("Limits", "form.json", p -> LimitSet.of(p.toString())),
                                seed("MachineSpec", "demo.json", MachineSpec::fromJson),
                                seed("Economics", "form.json", Economics::of),
                                seed("Transport", "demo.json", TransportDescription::fromJson),
                                seed("ToneList", "form.json", ToneList::fromJson),
                                seed("BatchList", "lines.txt", p -> BatchList.read(p, p)),
                                seed("BatchList", "table.csv", p -> BatchList.read(p, p)),
                                seed(
                                        "Loopback",
                                        "loopback.json",
                                        p -> LoopbackSession.read(p.getParent())),
                                seed(
                                        "Ladders",
                                        "ladders.json",
                                        p -> LadderSession.read(p.getParent()).levelAtK3(1))))
                .flatMap(Function.identity());
    }

    private static Stream<Arguments> sounds(String target, String names) {
        return List.of(names.split(", ")).stream()
                .map(
                        name ->
                                seed(
                                        target,
                                        name,
                                        path -> {
                                            try (AudioFile sound = AudioFiles.open(path)) {
                                                return sound.read(0, 4);
                                            }
                                        }));
    }

    private static Arguments seed(String target, String name, Function<Path, Object> reader) {
        return Arguments.of(target, name, reader);
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("seeds")
    void isTaken(String target, String name, Function<Path, Object> reader) throws IOException {
        String place = target + "FuzzTestInputs/anyBytes/" + name;
        boolean isResults = List.of("Results", "Loopback", "Ladders").contains(target);
        try (InputStream seed = SeedsTest.class.getResourceAsStream(place)) {
            HostileFile file = HostileFile.packed(isResults ? "results.json" : name);
            assertTrue(file.holding(seed.readAllBytes()).read(reader).isPresent(), place);
        }
    }
}
