package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import offtape.cli.batch.BatchList;
import offtape.cli.batch.Seal;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import offtape.cli.transfer.TransferEntry;
import offtape.cli.transfer.TransferLog;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.CueSheetJson;
import offtape.core.tape.ToneList;
import offtape.core.transport.TransportDescription;
import offtape.report.apply.correct.Corrector;
import offtape.report.cost.Economics;
import offtape.report.judge.LimitSet;
import offtape.report.result.LadderSession;
import offtape.report.result.LoopbackSession;
import offtape.report.result.Results;
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
                                        "TargetCurve",
                                        "wanted.csv",
                                        p ->
                                                new Corrector(
                                                        sound(), "", TargetCurveFuzzTest.wish(p))),
                                seed(
                                        "TargetCurve",
                                        "marked.txt",
                                        p ->
                                                new Corrector(
                                                        sound(), "", TargetCurveFuzzTest.wish(p))),
                                seed("Settings", "all.json", SeedsTest::remembered),
                                seed("Settings", "some.json", SeedsTest::remembered),
                                seed("TransferLog", "two-stems.json", SeedsTest::doneBefore),
                                seed("Seal", "whole.json", SeedsTest::sealed),
                                seed(
                                        "OutputFolder",
                                        "ours.json",
                                        p -> OutputFolderFuzzTest.isOpened(p.getParent(), "kept")),
                                seed("MotionTable", "wow.csv", SeedsTest::moved),
                                seed("MotionTable", "blanks.csv", SeedsTest::moved),
                                seed(
                                        "Correction",
                                        "session.json",
                                        p -> corrector(ResultsReader.read(p), null)),
                                seed("Model", "session.json", p -> ResultsReader.read(p)),
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
        try (InputStream seed = SeedsTest.class.getResourceAsStream(place)) {
            HostileFile file = HostileFile.packed(nameRead(target, name));
            assertTrue(file.holding(seed.readAllBytes()).read(reader).isPresent(), place);
        }
    }

    /** What a file has to be called for its reader. */
    private static String nameRead(String target, String seed) {
        return switch (target) {
            case "Results", "Loopback", "Ladders", "Correction", "Model" -> Results.FILE;
            case "TransferLog" -> TransferLog.FILE;
            case "Seal" -> Seal.FILE;
            case "OutputFolder" -> ".offtape-manifest.json";
            default -> seed;
        };
    }

    private static Results sound() {
        return LimitsFuzzTest.soundResults(TargetCurveFuzzTest.SESSION);
    }

    private static Object corrector(Results results, Path target) {
        return new Corrector(results, "the session", TargetCurveFuzzTest.wish(target));
    }

    private static Object remembered(Path file) {
        SoundSettings read = SettingsFile.at(file).read();
        assertNotEquals(SoundSettings.NONE, read);
        return read;
    }

    private static Object doneBefore(Path file) {
        List<TransferEntry> stems = TransferLog.in(file.getParent(), null, null).stems();
        assertEquals(2, stems.size());
        return stems;
    }

    private static Object sealed(Path file) {
        SealFuzzTest.resultsIn(file.getParent());
        return Seal.in(file.getParent()).orElseThrow();
    }

    private static Object moved(Path file) {
        return MotionTableFuzzTest.run(MotionTableFuzzTest.movedBy(file));
    }
}
