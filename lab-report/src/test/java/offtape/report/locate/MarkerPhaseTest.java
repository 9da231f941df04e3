package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.SincInterpolator;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lateness along a marker of half a second from 1 s on: 6 kHz down to 700 Hz and up again. */
class MarkerPhaseTest {

    private static final int RATE = 48_000;

    private static final double[] SOUND =
            new ProgrammeSignal(
                            new CueSheet(
                                    RATE,
                                    3L * RATE,
                                    -18,
                                    null,
                                    List.of(
                                            new Cue.Marker(
                                                    "start", ChannelSet.BOTH, RATE, RATE / 2))))
                    .read(0, 3 * RATE)[0];

    private static double[] late(double seconds, double gain, double noise) {
        Random random = new Random(3);
        double[] out = new double[4 * RATE];
        for (int i = 0; i < out.length; i++) {
            double place = i - seconds * RATE;
            boolean inside = place > 1 && place < SOUND.length - 2;
            out[i] =
                    noise * random.nextGaussian()
                            + (inside ? gain * SincInterpolator.at(SOUND, place) : 0);
        }
        return out;
    }

    private static List<PhaseReading> read(double mapLate, int channel, double[]... recording) {
        return new MarkerPhase(
                        new MemoryAudio("p", RATE, SOUND),
                        new MemoryAudio("r", RATE, recording),
                        TimeMap.straight(mapLate, 1, 3))
                .read(1, 0.5, channel, 7);
    }

    /** 125 blocks of 4 ms; those in the fades hold less and tell the same. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.5", "0.50002, 0.5", "0.49997, 0.5"})
    void latenessIsToldAgainstTheMap(double isLate, double mapped) {
        List<PhaseReading> readings = read(mapped, 0, late(isLate, 0.5, 0));
        assertEquals(125, readings.size());
        for (PhaseReading r : readings) {
            assertEquals(isLate - mapped, r.lateSeconds(), 1.5e-6, r.toString());
            assertTrue(r.programmeSeconds() > 1 && r.programmeSeconds() < 1.5);
            assertEquals(7, r.group());
        }
    }

    /**
     * A reading is of the middle of its power: of the 192 samples of a block, where the level does
     * not change, of the 95.5th.
     */
    @Test
    void eachReadingHasItsMoment() {
        List<PhaseReading> readings = read(0.5, 0, late(0.5, 0.5, 0));
        for (int k = 6; k < 119; k++) {
            double moment = 1 + (192 * k + 95.5) / RATE;
            assertEquals(moment, readings.get(k).programmeSeconds(), 0.1 / RATE, "block " + k);
        }
        // in the fade there is more power at the block's end, and less in the last one's
        assertTrue(readings.get(0).programmeSeconds() > 1 + 100.0 / RATE);
        assertTrue(readings.get(124).programmeSeconds() < 1.5 - 100.0 / RATE);
    }

    /** A tone before and behind the marker is not read, though it came back as well. */
    @Test
    void onlyTheMarkerIsRead() {
        double[] sent = SOUND.clone();
        double[] back = new double[4 * RATE];
        for (int i = 0; i < sent.length; i++) {
            boolean beside = i < RATE || i >= RATE + RATE / 2;
            sent[i] += beside ? 0.1 * Math.sin(2 * Math.PI * 1000 * i / RATE) : 0;
            back[i + RATE / 2] = sent[i];
        }
        List<PhaseReading> readings =
                new MarkerPhase(
                                new MemoryAudio("p", RATE, sent),
                                new MemoryAudio("r", RATE, back),
                                TimeMap.straight(0.5, 1, 3))
                        .read(1, 0.5, 0, 7);
        assertTrue(readings.get(0).programmeSeconds() > 1);
        assertTrue(readings.get(readings.size() - 1).programmeSeconds() < 1.5);
        assertEquals(125, readings.size());
    }

    /** A delay of 1.5 turns at 6 kHz, of 0.2 at 700 Hz: one number of whole turns is unknown. */
    @ParameterizedTest
    @ValueSource(doubles = {2.5e-4, -2.5e-4})
    void turnsAreFollowedFromReadingToReading(double late) {
        List<PhaseReading> readings = read(0.5, 0, late(0.5 + late, 0.5, 0));
        double turns = Math.rint((late - readings.get(0).lateSeconds()) * readings.get(0).hz());
        assertEquals(Math.signum(late), turns);
        for (PhaseReading r : readings) {
            assertEquals(late, r.lateSeconds() + turns / r.hz(), 2e-6, r.toString());
        }
    }

    /** Exponential from 6 kHz to 700 Hz, 2049 Hz half way, and back the same way. */
    @Test
    void eachReadingHasItsFrequency() {
        for (PhaseReading r : read(0.5, 0, late(0.5, 0.5, 0))) {
            double fromTurn = Math.abs(r.programmeSeconds() - 1.25);
            double hz = 700 * Math.pow(6000 / 700.0, fromTurn / 0.25);
            // about the turn the mean of a block lies above the lowest
            assertEquals(hz, r.hz(), (fromTurn < 0.004 ? 0.02 : 0.003) * hz, r.toString());
        }
    }

    /** An inverted return is half a turn, which is late or early by half a period. */
    @Test
    void anInvertedReturnIsHalfAPeriodOff() {
        for (PhaseReading r : read(0.5, 0, late(0.5, -0.5, 0))) {
            assertEquals(0.5, Math.abs(r.lateSeconds()) * r.hz(), 0.01, r.toString());
        }
    }

    /** Its own channel is read: here the second one is 30 µs later. */
    @Test
    void theChannelIsTheOneAskedFor() {
        double[][] pair = {late(0.5, 0.5, 0), late(0.50003, 0.4, 0)};
        assertEquals(0, mean(read(0.5, 0, pair)), 5e-7);
        assertEquals(3e-5, mean(read(0.5, 1, pair)), 5e-7);
    }

    private static double mean(List<PhaseReading> readings) {
        return readings.stream().mapToDouble(PhaseReading::lateSeconds).average().orElseThrow();
    }

    /**
     * White noise of a share of the marker's rms turns the phase of 192 samples, of which an
     * analytic signal has 96 that are independent and of them one half across, by that share over
     * the root of 192: a twentieth by 0.0036. What is stated holds that and no more than twice.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 1})
    void theStatedUncertaintyHoldsTheScatter(double share) {
        double rms = 0.5 * Math.pow(10, -18 / 20.0) / Math.sqrt(2);
        double turned = 0;
        double stated = 0;
        int count = 0;
        for (PhaseReading r : read(0.5, 0, late(0.5, 0.5, share * rms))) {
            turned += Math.pow(2 * Math.PI * r.hz() * r.lateSeconds(), 2);
            stated += Math.pow(2 * Math.PI * r.hz() * r.sigmaSeconds(), 2);
            count++;
        }
        double scatter = Math.sqrt(turned / count);
        assertEquals(share / Math.sqrt(192), scatter, 0.2 * scatter);
        double told = Math.sqrt(stated / count);
        assertTrue(told > scatter && told < 2 * scatter, told + " of " + scatter);
    }

    @Test
    void whereTheMarkerIsNotHeardNothingIsRead() {
        assertEquals(List.of(), read(2, 0, late(0.5, 0.5, 0)));
        List<PhaseReading> drowned = read(0.5, 0, late(0.5, 0.01, 0.1));
        assertTrue(drowned.size() < 12, drowned.size() + " readings");
    }
}
