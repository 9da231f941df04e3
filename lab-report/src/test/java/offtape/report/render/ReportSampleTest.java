package offtape.report.render;

import java.nio.file.*;
import org.junit.jupiter.api.Test;

final class ReportSampleTest {
    @Test
    void w() throws Exception {
        Path dir = Files.createDirectories(Path.of("target/report-sample"));
        Files.writeString(dir.resolve("report.html"), ReportWriter.html(Scenario.before()));
        Files.writeString(
                dir.resolve("pair.html"), ReportWriter.html(Scenario.before(), Scenario.after()));
        Files.writeString(dir.resolve("empty.html"), ReportWriter.html(Scenario.empty(null)));
    }
}
