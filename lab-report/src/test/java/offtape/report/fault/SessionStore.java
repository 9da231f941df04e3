package offtape.report.fault;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;

/**
 * Keeps measured sessions in the build's folder, so that a change of the method alone can be tried
 * without measuring anew; "clean" or a new name forgets them.
 */
final class SessionStore {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private SessionStore() {}

    static List<FaultSession> of(String name, Supplier<List<FaultSession>> measure) {
        Path file = Path.of("target", "fault-sessions", name + ".json");
        try {
            if (Files.exists(file)) {
                return JSON.readValue(file.toFile(), new TypeReference<List<FaultSession>>() {});
            }
            List<FaultSession> sessions = measure.get();
            Files.createDirectories(file.getParent());
            JSON.writeValue(file.toFile(), sessions);
            return sessions;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
