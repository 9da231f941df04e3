package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.core.transport.TransportDescription;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Descriptions of a transport. */
@Tag("fuzz")
@Timeout(20)
final class TransportFuzzTest {

    private final HostileFile file = HostileFile.named("transport.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(TransportDescription::fromJson);
    }
}
