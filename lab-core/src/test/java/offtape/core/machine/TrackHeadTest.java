package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.CueSheet;
import org.junit.jupiter.api.Test;

/** Dirt and wear of one track alone. */
class TrackHeadTest {

    private static final int RATE_HZ = 48_000;

    /**
     * At 190.5 mm/s 8 kHz has a wavelength of 23.8125 µm and 1 kHz, to which the machine is lined
     * up, one of 190.5 µm. A spacing of 3 µm takes 54.575·3·(1/23.8125 − 1/190.5) = 6.0161 dB
     * (Wallace 1951: 40π·log10(e) = 54.575 dB for each wavelength).
     */
    @Test
    void dirtOnOneTrackTakesItsHighsAlone() {
        assertEquals(0, relativeDb(0, "'right':{'spacingLossMicrometres':3}"), 1e-3);
        assertEquals(-6.0161, relativeDb(1, "'right':{'spacingLossMicrometres':3}"), 0.003);
    }

    /** What is said of one track stands in place of what is said of both. */
    @Test
    void oneTrackStandsInPlaceOfBoth() {
        String heads = "'spacingLossMicrometres':3,'left':{'spacingLossMicrometres':0}";
        assertEquals(0, relativeDb(0, heads), 1e-3);
        assertEquals(-6.0161, relativeDb(1, heads), 0.003);
    }

    /** A gap of 10 µm at 8 kHz: x = 11.1/23.8125, at 1 kHz 11.1/190.5; 20·log10(sinc/sinc). */
    @Test
    void aWornGapTakesItsHighsAlone() {
        double lost = sincDb(11.1 / 23.8125) - sincDb(11.1 / 190.5);
        assertEquals(lost, relativeDb(0, "'left':{'gapMicrometres':10}"), 0.003);
        assertEquals(0, relativeDb(1, "'left':{'gapMicrometres':10}"), 1e-3);
    }

    private static double sincDb(double x) {
        return 20 * Math.log10(Math.sin(Math.PI * x) / (Math.PI * x));
    }

    private static double relativeDb(int channel, String heads) {
        MachineSpec spec = Bench.machine("'heads':{" + heads + "}");
        MachineRun run =
                SimulatedMachine.of(spec)
                        .run(new CueSheet(RATE_HZ, RATE_HZ, -18.0, null, java.util.List.of()));
        SteadyTone tone = run.tone(channel);
        return 20 * Math.log10(tone.peak(1, 8000, 0) / tone.peak(1, 1000, 0));
    }
}
