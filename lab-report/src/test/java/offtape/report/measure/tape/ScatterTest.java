package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Means and their uncertainties, by hand. */
class ScatterTest {

    /**
     * Groups of values 0, 1 … G − 1 have the mean (G − 1)/2 and a variance among them of G·(G +
     * 1)/12, so their mean is known within √((G + 1)/12); half of Student's 95 % point for G − 1
     * degrees of freedom widens that.
     */
    @ParameterizedTest
    @CsvSource({
        "2, 1", "2, 5", "3, 5", "4, 5", "5, 5", "6, 5", "7, 5", "8, 5", "9, 5", "10, 5", "11, 5",
        "12, 5", "12, 20"
    })
    void groupsTellTheUncertainty(int groups, int each) {
        double[] values = new double[groups * each];
        Arrays.setAll(values, i -> i / each);
        Scatter scatter = Scatter.of(values);
        double student = new TDistribution(groups - 1).inverseCumulativeProbability(0.975) / 2;
        double standard = student * Math.sqrt((groups + 1) / 12.0);
        assertEquals((groups - 1) / 2.0, scatter.mean(), 1e-12);
        assertEquals(standard, scatter.standard(), 6e-4 * standard);
        assertEquals(2 * standard, scatter.expanded(), 1.2e-3 * standard);
    }

    /** What changes within a group only does not count: each has the same mean. */
    @Test
    void whatIsFasterThanAGroupAveragesOut() {
        double[] values = new double[40];
        Arrays.setAll(values, i -> 3 + (i % 5 - 2));
        assertEquals(new Scatter(3, 0), Scatter.of(values));
    }

    /** 13 values in two groups of six and seven: means 0 and 1 about 7/13. */
    @Test
    void groupsMayBeUnequal() {
        double[] values = new double[13];
        Arrays.setAll(values, i -> i < 6 ? 0 : 1);
        double mean = 7.0 / 13;
        double squares = mean * mean + (1 - mean) * (1 - mean);
        assertEquals(mean, Scatter.of(values).mean(), 1e-12);
        assertEquals(6.353 * Math.sqrt(squares / 2), Scatter.of(values).standard(), 1e-9);
    }

    /** One value alone is as doubtful as it is large. */
    @Test
    void oneValueTellsNoScatter() {
        assertEquals(new Scatter(-4, 4), Scatter.of(new double[] {-4}));
    }
}
