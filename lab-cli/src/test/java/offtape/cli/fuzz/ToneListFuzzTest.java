package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.core.tape.ToneList;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Lists of a tape's tones. */
@Tag("fuzz")
@Timeout(20)
final class ToneListFuzzTest {

    private final HostileFile file = HostileFile.named("tones.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(ToneList::fromJson);
    }
}
