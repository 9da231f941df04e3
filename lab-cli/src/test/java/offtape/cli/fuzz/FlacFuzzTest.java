package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** FLAC streams, with a tag before them and without. */
@Tag("fuzz")
@Timeout(20)
final class FlacFuzzTest {

    private final SoundCheck check = new SoundCheck(HostileFile.packed("sound.flac"));

    @FuzzTest
    void anyBytes(byte[] bytes) {
        check.of(bytes, 0);
    }
}
