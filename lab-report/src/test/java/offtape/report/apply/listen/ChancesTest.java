package offtape.report.apply.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** The table that the page's own reckoning is held against in a browser, and what Java reckons. */
class ChancesTest {

    @Test
    void theTableHoldsTheTailsOfTheBinomialDistribution() throws IOException {
        List<String> lines;
        try (InputStream in = ChancesTest.class.getResourceAsStream("chances.csv")) {
            lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
        assertTrue(lines.size() > 40);
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",");
            BinomialDistribution guessing =
                    new BinomialDistribution(null, Integer.parseInt(cells[0]), 0.5);
            double stated = Double.parseDouble(cells[2]);
            double tail = 1 - guessing.cumulativeProbability(Integer.parseInt(cells[1]) - 1);
            // one minus a sum loses digits of small tails
            assertEquals(tail, stated, 1e-12, line);
        }
    }

    /** By hand: 16 over 4, 3, 2, 1 and 0 are 1820 + 560 + 120 + 16 + 1 = 2517 of 65536. */
    @Test
    void twelveOfSixteenAreTheFewestThatSayMoreThanLuck() {
        assertTrue(2517 / 65536.0 <= 0.05 && (2517 + 4368) / 65536.0 > 0.05);
        assertEquals(12, Listening.fewestRight(16));
    }

    /** One of 32 is 3.1 %; two or more are 6 of 32. At 100 trials 59 by the table of the tails. */
    @Test
    void shortAndLongRounds() {
        assertEquals(5, Listening.fewestRight(5));
        BinomialDistribution guessing = new BinomialDistribution(null, 100, 0.5);
        int fewest = Listening.fewestRight(100);
        assertTrue(1 - guessing.cumulativeProbability(fewest - 1) <= 0.05);
        assertTrue(1 - guessing.cumulativeProbability(fewest - 2) > 0.05);
    }
}
