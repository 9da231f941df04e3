package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** AIFF files and AIFF-C files in their codings. */
@Tag("fuzz")
@Timeout(20)
final class AiffFuzzTest {

    private final SoundCheck check = new SoundCheck(HostileFile.named("sound.aiff"));

    @FuzzTest
    void anyBytes(byte[] bytes) {
        check.of(bytes, 1);
    }
}
