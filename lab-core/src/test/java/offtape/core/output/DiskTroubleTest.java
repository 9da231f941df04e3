package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Reasons as the common systems word them (common practice, no source). */
class DiskTroubleTest {

    static Stream<Arguments> troubles() {
        String full = "the disk is full; make room or choose another disk";
        return Stream.of(
                Arguments.of(new IOException("No space left on device"), full),
                Arguments.of(new IOException("There is not enough space on the disk"), full),
                Arguments.of(
                        new FileSystemException("a", null, "Disk quota exceeded"),
                        "the disk quota is used up; make room or choose another disk"),
                Arguments.of(
                        new FileSystemException("a", null, "Read-only file system"),
                        "the disk is read-only; choose another one"),
                Arguments.of(
                        new AccessDeniedException("a"),
                        "permission is missing; check the rights of the file and its folder"),
                Arguments.of(
                        new IOException("Input/output error"),
                        "the system says \"Input/output error\""),
                Arguments.of(new IOException(), "the system says \"IOException\""));
    }

    @ParameterizedTest
    @MethodSource("troubles")
    void words(IOException trouble, String words) {
        assertEquals(words, DiskTrouble.words(trouble));
    }
}
