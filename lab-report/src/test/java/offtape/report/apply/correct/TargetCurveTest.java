package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TargetCurveTest {

    @TempDir private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("target.csv"), text);
    }

    /** Straight over the logarithm: halfway from 100 Hz to 10 kHz is 1 kHz, which becomes 0 dB. */
    @Test
    void aTableIsReadAndSetTo0DbAt1kHz() throws IOException {
        Curve c =
                TargetCurve.read(
                        file("\uFEFFfrequency_hz,level_db\r\n# mine\n100, 2\r\n\n10000;-4.0\n"));
        assertEquals(3, c.at(100), 1e-9);
        assertEquals(0, c.at(1000), 1e-9);
        assertEquals(-3, c.at(10_000), 1e-9);
        assertEquals(3, c.at(20), 1e-9);
        assertEquals(-3, c.at(20_000), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|no point",
                "100,1|one point",
                "100,1~200,x|line 2 is not a frequency and a level",
                "100,1~200|line 2 is not",
                "100,1~200,1,3|line 2 is not",
                "100,1~200,NaN|line 2 is not",
                "100,1~200,Infinity|line 2 is not",
                "100,1~100,2|line 2 has a frequency that is not above",
                "100,1~50,2|line 2 has a frequency that is not above",
                "100,1~200,-41|line 2 wants -41.00 dB",
                "0,1~200,1|line 1 has a frequency outside",
                "-5,1~200,1|line 1 has a frequency outside",
                "hz,db~hz,db~100,1~200,1|line 2 is not",
            })
    void whatIsNoneIsRefusedWithItsPlace(String text, String words) throws IOException {
        Path file = file(text.replace('~', '\n'));
        String refusal =
                assertThrows(UnusableInputException.class, () -> TargetCurve.read(file))
                        .getMessage();
        assertTrue(refusal.contains(words) && refusal.contains("target.csv"), refusal);
    }

    @Test
    void whatIsNoTextIsRefused() throws IOException {
        Path file = Files.write(folder.resolve("t.csv"), new byte[] {(byte) 0xc3, 0x28});
        assertThrows(UnusableInputException.class, () -> TargetCurve.read(file));
        assertThrows(
                UnusableInputException.class, () -> TargetCurve.read(folder.resolve("none.csv")));
    }
}
