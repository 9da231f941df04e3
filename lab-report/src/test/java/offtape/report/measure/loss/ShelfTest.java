package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ShelfTest {

    /**
     * (1 + (ω·70 µs)²) / (1 + (ω·50 µs)²): ω·70 µs is 4.3982 at 10 kHz and 0.43982 at 1 kHz, ω·50
     * µs 3.1416 and 0.31416. 10·lg(20.3444/10.8696) − 10·lg(1.193444/1.098696) = 2.7222 − 0.3592.
     */
    @Test
    void aTapeOfFiftySoundsBrightWithSeventy() {
        Shelf shelf = new Shelf(50, 70);
        assertEquals(2.3630, shelf.highDb(), 2e-4);
        assertEquals(2.3630, shelf.db(10_000), 2e-4);
        assertEquals(0, shelf.db(1000), 1e-12);
        assertEquals(-2.3630, new Shelf(70, 50).highDb(), 2e-4);
    }

    /** 19.05 cm/s had 50, 70 and 100 µs, 38.1 cm/s 35 and 50 µs, 12 cm/s none. */
    @Test
    void everyPairOfASpeedIsTried() {
        assertEquals(
                List.of(
                        new Shelf(50, 70),
                        new Shelf(50, 100),
                        new Shelf(70, 50),
                        new Shelf(70, 100),
                        new Shelf(100, 50),
                        new Shelf(100, 70)),
                Shelf.of(190.5));
        assertEquals(List.of(new Shelf(35, 50), new Shelf(50, 35)), Shelf.of(381));
        assertEquals(List.of(), Shelf.of(120));
    }
}
