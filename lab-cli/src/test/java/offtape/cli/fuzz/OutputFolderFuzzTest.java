package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Lists of what was written into a folder: none makes a user's file pass for ours. */
@Tag("fuzz")
@Timeout(20)
final class OutputFolderFuzzTest {

    private static final String MINE = "mine";

    private final HostileFile file = HostileFile.named(".offtape-manifest.json");
    private final Path kept = file.folder().resolve("kept.txt");

    @FuzzTest
    void anyBytes(byte[] bytes) throws IOException {
        kept.toFile().deleteOnExit();
        Files.writeString(kept, MINE);
        boolean opened =
                file.holding(bytes).attempt(() -> isOpened(file.folder(), "kept.txt")).isPresent();
        if (opened) {
            // only one that names this very content says that it is ours
            String text = new String(bytes, StandardCharsets.ISO_8859_1);
            assertTrue(text.contains(Sha256.ofText(MINE)), "a user's file would be replaced");
        }
        assertEquals(MINE, Files.readString(kept));
        assertEquals(2, entries(file.folder()), "something was left behind");
    }

    static boolean isOpened(Path folder, String name) {
        try (OutputFolder out = OutputFolder.open(folder, false, name)) {
            return Files.isDirectory(out.directory());
        }
    }

    private static long entries(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.count();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
