package offtape.core.unit;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecibelsTest {

    /** lg 2 = 0.30103: twice the amplitude is 6.0206 dB, twice the power 3.0103 dB. */
    @Test
    void twiceAsMuch() {
        assertPublished(6.0206, Decibels.ofAmplitude(2), 5e-5, 0, "amplitude");
        assertPublished(3.0103, Decibels.ofPower(2), 5e-5, 0, "power");
        assertEquals(10, Decibels.toAmplitude(20), 1e-14);
        assertEquals(100, Decibels.toPower(20), 1e-13);
        assertEquals(0, Decibels.ofAmplitude(1), 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-144, -58, -3, 0, 0.01, 14})
    void thereAndBack(double db) {
        assertEquals(db, Decibels.ofAmplitude(Decibels.toAmplitude(db)), 1e-12);
        assertEquals(db, Decibels.ofPower(Decibels.toPower(db)), 1e-12);
    }

    @Test
    void nothingIsInfinitelyFarDown() {
        assertEquals(Double.NEGATIVE_INFINITY, Decibels.ofAmplitude(0), 0);
        assertEquals(0, Decibels.toPower(Double.NEGATIVE_INFINITY), 0);
    }
}
