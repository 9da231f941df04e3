package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.NoiseTruth;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.PlayedMachine;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Noise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reference tone, a silence and a speed tone through simulated machines whose noise is known. */
class NoiseMeasureTest {

    private static final int RATE = 44_100;

    private static final Cue REFERENCE =
            new Cue.Tone("reference", ChannelSet.BOTH, RATE / 2, RATE, 1000, 0);

    private static final Cue SILENCE =
            new Cue.Silence("silence", ChannelSet.BOTH, 2L * RATE, 4L * RATE);

    private static final Cue SPEED =
            new Cue.Tone("speed", ChannelSet.BOTH, 7L * RATE, 6L * RATE, 3150, 0);

    private static final CueSheet SHEET = sheet(14, REFERENCE, SILENCE, SPEED);

    /** For what the silence tells. */
    private static final CueSheet SHORT = sheet(7, REFERENCE, SILENCE);

    private static CueSheet sheet(int seconds, Cue... cues) {
        return new CueSheet(RATE, (long) seconds * RATE, -18, null, List.of(cues));
    }

    private record Measured(Noise noise, NoiseTruth truth) {}

    private static Measured measured(String members) {
        return measured(SHEET, members);
    }

    private static Measured measured(CueSheet sheet, String members) {
        MachineSpec spec =
                MachineSpec.fromJson(
                        ("{'format':'offtape-machine','version':1," + members + "}")
                                .replace('\'', '"'));
        MachineRun run = SimulatedMachine.of(spec).run(sheet);
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        Programme programme = new Programme(sheet, new MemoryAudio("p", RATE, sound));
        double[][] out = PlayedMachine.sound(run, programme.audio());
        double seconds = (double) run.frames() / RATE;
        Location location =
                new Location(
                        TimeMap.straight(0, 1, sheet.seconds(sheet.frames())),
                        seconds,
                        0,
                        0,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        seconds,
                        List.of());
        ProgrammeReturn ret =
                new ProgrammeReturn(
                        programme, new MemoryAudio("r", RATE, out[0], out[1]), location);
        NoiseDensities densities = NoiseDensities.measure(ret).orElseThrow();
        Noise noise =
                new NoiseMeasure(
                                ret,
                                ReferenceLevels.measure(ret).orElseThrow(),
                                densities,
                                ModulationNoise.of(ret, densities))
                        .measure(0, List.of());
        return new Measured(noise, run.truth().noise().get(0));
    }

    private static void assertHolds(double truth, Quantity found, double widest) {
        assertTrue(found.isKnown(), found.reason());
        assertEquals(truth, found.value(), found.uncertainty());
        assertTrue(found.uncertainty() <= widest, found.toString());
    }

    @ParameterizedTest
    @CsvSource({"-58, 0", "-50, 3", "-62, -3"})
    void levelsOfHissHoldTheirUncertainty(double levelDb, double tilt) {
        Measured m =
                measured(
                        SHORT, "'hiss':{'levelDb':" + levelDb + ",'tiltDbPerOctave':" + tilt + "}");
        assertHolds(m.truth().unweighted(), m.noise().unweighted(), 0.3);
        assertHolds(m.truth().aWeighted(), m.noise().aWeighted(), 0.15);
        assertArrayEquals(new double[] {22.4, 22_050}, m.noise().unweightedBandHz());
        assertTrue(m.noise().hum().isEmpty());
        assertFalse(m.noise().modulationNoise().isKnown());
    }

    /** Two lines of 60.02 Hz mains in hiss; hum counts as noise. */
    @Test
    void humIsFoundOnTheMachine() {
        Measured m =
                measured(
                        SHORT,
                        "'hiss':{'levelDb':-58},'hum':{'mainsHz':60.02,'lines':["
                                + "{'harmonic':1,'levelDb':-60},{'harmonic':3,'levelDb':-66}]}");
        assertHolds(60.02, m.noise().mainsFrequency(), 0.05);
        for (int i = 0; i < 2; i++) {
            double found = m.noise().hum().get(i).levelDb();
            double u = m.noise().hum().get(i).uncertaintyDb();
            // one draw: one of twenty lies outside k = 2, one of four hundred outside k = 3
            assertEquals(m.truth().hum().get(i).levelDb(), found, 1.5 * u);
        }
        assertHolds(m.truth().unweighted(), m.noise().unweighted(), 0.3);
    }

    /** With wow, flutter and a dropout on the tone, which must not count as modulation noise. */
    @ParameterizedTest
    @CsvSource({"-45, -58", "-40, -58", "-55, -70", "-32, -50"})
    void modulationNoiseHoldsItsUncertainty(double levelDb, double hissDb) {
        Measured m =
                measured(
                        "'transport':{'components':[{'frequencyHz':0.7,'peakPercent':0.1},"
                                + "{'frequencyHz':37,'peakPercent':0.15}]},"
                                + "'hiss':{'levelDb':"
                                + hissDb
                                + "},'dropouts':[{'channel':'left','atSeconds':9,"
                                + "'milliseconds':40,'depthDb':10}],"
                                + "'modulationNoise':{'levelDb':"
                                + levelDb
                                + "}");
        System.out.printf(
                "modulation noise of %.2f dB: %s%n",
                m.truth().modulationNoise(), m.noise().modulationNoise());
        assertHolds(m.truth().modulationNoise(), m.noise().modulationNoise(), 1);
    }

    /** Flutter alone leaves the amplitude where it is; hiss alone is taken out. */
    @Test
    void flutterIsNoModulationNoise() {
        Measured m =
                measured(
                        "'transport':{'scrapeFlutter':{'rmsPercent':0.1,'lowHz':20,'highHz':500}},"
                                + "'hiss':{'levelDb':-58}");
        assertFalse(m.noise().modulationNoise().isKnown(), m.noise().modulationNoise().toString());
        assertTrue(m.noise().modulationNoise().reason().contains("it is below"));
    }
}
