package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FamilyTest {

    private static final LossTerm AZIMUTH = LossTerm.of(Cause.AZIMUTH, 190.5);

    /**
     * None or one of six shelves at 19.05 cm/s; one aperture or two, or a gap beside azimuth;
     * orders 1, 2 and 4, and 2 bent by the rate above 40 kHz. Without constants of its speed there
     * is no shelf.
     */
    @ParameterizedTest
    @CsvSource({
        "190.5, 48000, false, 56, 28",
        "190.5, 48000, true, 28, 28",
        "190.5, 40000, false, 42, 14",
        "190.5, 40001, false, 56, 28",
        "120, 32000, false, 6, 2",
    })
    void familiesAreAllWaysToPutTogether(
            double mmPerS, double rateHz, boolean known, int all, int usual) {
        List<Family> families = Family.all(mmPerS, rateHz, known ? AZIMUTH : null);
        assertEquals(all, families.size());
        assertEquals(all, families.stream().distinct().count());
        // of the bent and the straight form of second order, with one aperture
        assertEquals(
                rateHz > 40_000 ? all / (known ? 2 : 4) : usual / 2,
                families.stream().filter(Family::isUsual).count());
    }

    /**
     * 15 % of machines are set wrong, each of six pairs as likely: 2·ln(6 · 0.85/0.15) = 7.0527.
     */
    @Test
    void aWrongEqualisationMustEarnIt() {
        for (Family family : Family.all(190.5, 48_000, null)) {
            assertEquals(family.shelf() == null ? 0 : 7.0527, family.penalty(), 1e-4);
        }
    }

    /** Bits: space, aperture, layer, amplifier; what is known is in every set. */
    @Test
    void aSetHasTheCausesOfItsBits() {
        Family family = Family.all(190.5, 48_000, AZIMUTH).get(0);
        assertEquals(16, family.size());
        assertEquals(List.of(Cause.AZIMUTH), family.set(0).causes());
        assertEquals(List.of(Cause.AZIMUTH, Cause.SPACING), family.set(1).causes());
        assertEquals(List.of(Cause.AZIMUTH, Cause.GAP), family.set(2).causes());
        assertEquals(
                List.of(Cause.AZIMUTH, Cause.THICKNESS, Cause.UPPER_EDGE), family.set(12).causes());
        assertEquals(
                List.of(Cause.AZIMUTH, Cause.SPACING, Cause.GAP, Cause.THICKNESS, Cause.UPPER_EDGE),
                family.set(15).causes());
        Family alone = Family.all(190.5, 48_000, null).get(0);
        assertEquals(List.of(), alone.set(0).causes());
        assertEquals(List.of(Cause.APERTURE), alone.set(2).causes());
    }

    /** A layer counts beside a space as what it does beyond one. */
    @Test
    void aLayerBesideASpaceIsWhatIsBeyondIt() {
        Family family = Family.all(190.5, 48_000, null).get(0);
        assertTrue(family.set(5).terms().get(1).isBeyondSpacing());
        assertFalse(family.set(4).terms().get(0).isBeyondSpacing());
        assertFalse(family.set(6).terms().get(1).isBeyondSpacing());
    }

    @Test
    void aSetWithAShelfHasItsCauseAndCurve() {
        Family wrong =
                Family.all(190.5, 48_000, null).stream()
                        .filter(f -> new Shelf(50, 70).equals(f.shelf()))
                        .findFirst()
                        .orElseThrow();
        CauseSet set = wrong.set(1);
        assertEquals(List.of(Cause.SPACING, Cause.EQUALISATION), set.causes());
        // 54.575 dB a wave: 1 µm at 10 kHz of 19.05 µm is 2.8648 dB; the shelf makes 2.3630 dB
        assertEquals(2.3630 - 2.8648, set.db(new double[] {1}, 10_000), 3e-4);
        assertEquals(-1, set.index(Cause.GAP));
        assertEquals(0, set.index(Cause.SPACING));
        assertEquals(0, new CauseSet(List.of(), null).db(new double[0], 10_000));
    }
}
