package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** WAV files with 16, 24 and 32 bits, float, extended headers, RF64 and BW64. */
@Tag("fuzz")
@Timeout(20)
final class WavFuzzTest {

    private final SoundCheck check = new SoundCheck(HostileFile.named("sound.wav"));

    @FuzzTest
    void anyBytes(byte[] bytes) {
        check.of(bytes, 1);
    }
}
