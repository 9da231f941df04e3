package offtape.cli.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.cli.capture.CaptureProgress;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.LoopLayer;
import offtape.cli.sound.LoopMachine;
import offtape.cli.sound.StreamRequest;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.output.OutputFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A run that somebody ends. */
@Timeout(60)
class TransferTest {

    private static final int RATE = 16_000;

    private static final TransferListener NOBODY =
            new TransferListener() {
                @Override
                public void begins(Stem stem, double driveDb) {
                    // nobody listens
                }

                @Override
                public void skipped(Stem stem) {
                    // nobody listens
                }

                @Override
                public void repeats(Stem stem) {
                    // nobody listens
                }

                @Override
                public CaptureProgress progress() {
                    return (seconds, of, peaks, clipped) -> {};
                }

                @Override
                public void ended(TransferEntry entry) {
                    // nobody listens
                }
            };

    @TempDir private Path folder;

    private Path stem(String name) {
        Path file = folder.resolve(name);
        try (WavWriter wav = WavWriter.create(file, new WavFormat(RATE, 1, WavEncoding.PCM_24))) {
            wav.write(new double[][] {new double[4000]});
        }
        return file;
    }

    @Test
    void whatIsDoneStaysAndTheRestIsSilentAtOnce() throws IOException {
        StopSignal stop = new StopSignal();
        LoopLayer layer =
                new LoopLayer(LoopMachine.wire(3000))
                        .with(
                                (number, stream) -> {
                                    if (number == 2) {
                                        stream.stoppedAfter = 20_000;
                                        stream.stopping = stop::give;
                                    }
                                });
        StreamRequest.End end = new StreamRequest.End(null, ChannelPair.FIRST);
        TransferPlan plan =
                new TransferPlan(
                        Drive.by(0), null, 0.06, LevelCeiling.FULL_SCALE, 0.5, false, false, false);
        List<Path> files = List.of(stem("a.wav"), stem("b.wav"), stem("c.wav"));
        Path out = folder.resolve("out");
        List<TransferEntry> ended = new ArrayList<>();
        try (OutputFolder place = OutputFolder.open(out, false)) {
            ended.addAll(
                    new Transfer(
                                    plan,
                                    rate -> layer.open(new StreamRequest(end, end, rate, 0.3)),
                                    place,
                                    TransferLog.in(out, null, null),
                                    stop,
                                    NOBODY)
                            .send(new StemList(files, out).read(null)));
        }
        assertEquals(1, ended.size());
        assertTrue(ended.get(0).isDone());
        assertEquals(2, layer.count());
        assertTrue(layer.stream(2).played(0).length < 25_000);
        try (Stream<Path> names = Files.list(out)) {
            assertEquals(
                    Set.of(".offtape-manifest.json", "a.wav", "transfer.json"),
                    names.map(p -> p.getFileName().toString()).collect(Collectors.toSet()));
        }
        assertFalse(TransferLog.in(out, null, null).of("b.wav").isPresent());
    }
}
