package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;

/** A steady tone, cell by cell. */
class ToneCellsTest {

    /**
     * Peak 0.2 on the left, half of that on the right, which is 100 µs late: a quarter of the
     * squared peak is the power, right times the conjugate of left turns by −2π·401·100 µs. The
     * twelve seconds are read in more than one piece.
     */
    @Test
    void everyCellHoldsTheTone() {
        double late = 1e-4;
        MemoryAudio sound = new Sounding(12).at(401).right(0.5, t -> late).pair();
        ToneCells cells = ToneCells.of(sound, 0.25, 11.75, 400);
        assertEquals(2, cells.channels());
        assertEquals(400, cells.carrierHz(), 0);
        assertTrue(cells.cellSeconds() >= 0.05 && cells.cellSeconds() < 0.06);
        assertEquals(11.5 / cells.cellSeconds(), cells.count(), 1.5);
        assertTrue(cells.count() > 200);
        double phase = -2 * Math.PI * 401 * late;
        for (int i = 0; i < cells.count(); i++) {
            assertEquals(0.25 + i * cells.cellSeconds(), cells.seconds(i), 1e-9);
            assertEquals(0.01, cells.power(0, i), 1e-5);
            assertEquals(0.0025, cells.power(1, i), 2.5e-6);
            assertEquals(0.0125, cells.power(i), 1.25e-5);
            assertEquals(401, cells.hz(i), 1e-3);
            assertEquals(0.005 * Math.cos(phase), cells.crossRe(i), 5e-6);
            assertEquals(0.005 * Math.sin(phase), cells.crossIm(i), 5e-6);
        }
    }

    /** Cells lie where they are said to: the level rises by a decibel a second. */
    @Test
    void cellsLieWhereTheyAreSaidTo() {
        MemoryAudio sound = new Sounding(4).level(t -> t - 4).mono();
        ToneCells cells = ToneCells.of(sound, 0.5, 3.5, 400);
        assertEquals(1, cells.channels());
        for (int i = 0; i < cells.count(); i++) {
            double middle = cells.seconds(i) + cells.cellSeconds() / 2;
            assertEquals(
                    10 * Math.log10(0.01) + middle - 4, 10 * Math.log10(cells.power(0, i)), 0.01);
        }
        assertEquals(0, ToneCells.of(sound, -3, 1, 400).seconds(0), 1e-9);
        assertEquals(0, ToneCells.of(sound, 2, 2, 400).count());
    }

    /** Frequencies below the carrier count down; the louder channel tells more. */
    @Test
    void theFrequencyIsThatOfBothChannels() {
        ToneCells low = ToneCells.of(new Sounding(2).at(396.5).pair(), 0.3, 1.7, 400);
        for (int i = 0; i < low.count(); i++) {
            assertEquals(396.5, low.hz(i), 1e-3);
        }
    }
}
