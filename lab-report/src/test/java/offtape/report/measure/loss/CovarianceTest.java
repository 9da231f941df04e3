package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.DoubleStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CovarianceTest {

    /**
     * 1000, 1414 and 2000 Hz with noise of 0.02, 0.03 and 0.04 dB. What filters leave, 0.01 dB over
     * half an octave, makes 1e-4 · (1, exp(−1/2), exp(−2)) at no, half and a whole octave; an
     * unevenness of 0.1 dB over a third of an octave 0.01 · (1, exp(−9/8), exp(−9/2)), with a tenth
     * more from point to point. So the variances are 0.0115, 0.0120 and 0.0127 dB², the covariances
     * 0.00330718, 0.00330718 and 0.00012462 dB². The sum of squares of whitened values is v'·C⁻¹·v,
     * for v = (1, 0, 0) (c22·c33 − c23²) / det C; worked with a matrix calculator.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 0, 94.912402",
        "0, 1, 0, 97.979852",
        "0, 0, 1, 85.250916",
        "1, 1, 1, 184.524110",
        "1, -2, 1, 797.330507",
    })
    void whitenedValuesHoldTheWholeCovariance(double a, double b, double c, double squares) {
        double[] hz = {1000, 1000 * Math.sqrt(2), 2000};
        LossCurve curve = new LossCurve(hz, new double[3], new double[] {0.02, 0.03, 0.04});
        double[] white = Covariance.of(curve, 0.1).whiten(new double[] {a, b, c});
        assertEquals(squares, DoubleStream.of(white).map(w -> w * w).sum(), 1e-5);
    }
}
