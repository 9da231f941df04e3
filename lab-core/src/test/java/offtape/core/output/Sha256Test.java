package offtape.core.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Worked examples of FIPS 180-4 (NIST's example values; from memory). */
class Sha256Test {

    @TempDir Path dir;

    private String of(String content) throws IOException {
        return Sha256.ofFile(Files.writeString(dir.resolve("x"), content));
    }

    @Test
    void workedExamples() throws IOException {
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", of("abc"));
        assertEquals(
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
                of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"));
        assertEquals(
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
                of("a".repeat(1_000_000)));
    }

    @Test
    void aMissingFileIsNamed() {
        Path file = dir.resolve("none");
        assertEquals(
                file + " cannot be read: it is no longer there.",
                assertThrows(UnusableInputException.class, () -> Sha256.ofFile(file)).getMessage());
    }
}
