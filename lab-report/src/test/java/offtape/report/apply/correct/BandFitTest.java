package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.filter.EqualiserBand;
import offtape.core.filter.EqualiserBand.Kind;
import org.junit.jupiter.api.Test;

class BandFitTest {

    private static final BoostLimit LIMIT = new BoostLimit(12, 12);
    private static final Stretch ALL = new Stretch(20, 20_000);

    private static Curve curve(List<EqualiserBand> bands) {
        double[] hz = Grid.over(15, 24_000);
        return new Curve(
                hz, Arrays.stream(hz).map(f -> EqualiserSettings.gainDb(bands, f)).toArray());
    }

    @Test
    void bandsThatMadeTheCurveAreFoundAgain() {
        List<EqualiserBand> made =
                List.of(
                        new EqualiserBand(Kind.LOW_SHELF, 90, -3, EqualiserBand.SHELF_Q),
                        new EqualiserBand(Kind.PEAK, 2500, 4, 1.5),
                        new EqualiserBand(Kind.HIGH_SHELF, 9000, 6, EqualiserBand.SHELF_Q));
        EqualiserSettings found = BandFit.of(curve(made), ALL, LIMIT, 3);
        assertEquals(3, found.bands().size());
        assertTrue(found.worstDb() < 0.1, "off by " + found.worstDb());
        assertEquals(2500, found.bands().get(1).frequencyHz(), 50);
        assertEquals(0, found.gainDb(1000), 0.051);
    }

    @Test
    void numbersAreThoseOneDials() {
        EqualiserBand near = Dial.near(new EqualiserBand(Kind.PEAK, 12_345.6, 3.26, 1.234));
        assertEquals(new EqualiserBand(Kind.PEAK, 12_300, 3.3, 1.2), near);
    }

    @Test
    void aFlatMachineNeedsNoBand() {
        EqualiserSettings none = BandFit.of(curve(List.of()), ALL, LIMIT, 4);
        assertEquals(List.of(), none.bands());
        assertEquals(0, none.worstDb(), 1e-9);
    }

    @Test
    void numbersStayWithinTheirLimits() {
        double[] hz = Grid.over(15, 24_000);
        Curve wild =
                new Curve(hz, Arrays.stream(hz).map(f -> f > 5000 && f < 5500 ? 12 : 0).toArray());
        for (int bands = 1; bands <= 6; bands += 5) {
            for (EqualiserBand b : BandFit.of(wild, ALL, new BoostLimit(6, 6), bands).bands()) {
                assertTrue(b.q() >= 0.3 && b.q() <= 6 && Math.abs(b.gainDb()) <= 6, b.toString());
            }
        }
    }
}
