package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The place of a file that is being made, as a user named it. */
class StagedPlaceTest {

    @TempDir Path temp;
    private Path dir;

    @BeforeEach
    void real() throws IOException {
        dir = temp.toRealPath();
    }

    @Test
    void ofASingleFile() {
        Path take = dir.resolve("new/my take.wav");
        try (OutputFile out = OutputFile.open(take, false)) {
            assertEquals(take, StagedPlace.of(out.path()));
        }
    }

    @Test
    void inAFolderThatIsNotThereYet() {
        Path session = dir.resolve("session");
        try (OutputFolder out = OutputFolder.open(session, false)) {
            assertEquals(session.resolve("a.wav"), StagedPlace.of(out.path("a.wav")));
            assertEquals(session.resolve("b/new/a.wav"), StagedPlace.of(out.path("b/new/a.wav")));
        }
    }

    @Test
    void inAFolderThatIsThere() throws IOException {
        Path session = Files.createDirectory(dir.resolve("session"));
        try (OutputFolder out = OutputFolder.open(session, false)) {
            assertEquals(session.resolve("a.wav"), StagedPlace.of(out.path("a.wav")));
        }
    }

    @Test
    void elsewhereItIsTheFileItself() {
        Path plain = dir.resolve("new/plain.wav");
        assertEquals(plain, StagedPlace.of(plain));
        assertEquals(Path.of("plain.wav"), StagedPlace.of(Path.of("plain.wav")));
    }
}
