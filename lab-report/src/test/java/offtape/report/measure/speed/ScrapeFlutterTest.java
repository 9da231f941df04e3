package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
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
import offtape.report.result.Speed;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Scrape flutter of simulated machines that have it, and of others that have everything else. */
class ScrapeFlutterTest {

    private static final int RATE = 44_100;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    12L * RATE,
                    -18,
                    null,
                    List.of(
                            new Cue.Silence("silence", ChannelSet.BOTH, RATE / 2, 3L * RATE),
                            new Cue.Tone("speed", ChannelSet.BOTH, 4L * RATE, 7L * RATE, 3150, 0)));

    private static Speed measured(String members) {
        MachineSpec spec =
                MachineSpec.fromJson(
                        ("{'format':'offtape-machine','version':1,'mode':'reference-tape'"
                                        + members
                                        + "}")
                                .replace('\'', '"'));
        MachineRun run = SimulatedMachine.of(spec).run(SHEET);
        double[][] sound = new ProgrammeSignal(SHEET).read(0, (int) SHEET.frames());
        Programme programme = new Programme(SHEET, new MemoryAudio("p", RATE, sound));
        double[][] out = PlayedMachine.sound(run, programme.audio());
        double seconds = (double) run.frames() / RATE;
        Location location =
                new Location(
                        TimeMap.straight(0, 1, 12),
                        seconds,
                        0,
                        0,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        seconds,
                        List.of());
        return SpeedTone.measure(
                        new ProgrammeReturn(
                                programme, new MemoryAudio("r", RATE, out[0], out[1]), location))
                .speed();
    }

    private static String scrape(double percent, double low, double high) {
        return "'scrapeFlutter':{'rmsPercent':%s,'lowHz':%s,'highHz':%s}"
                .formatted(percent, low, high);
    }

    private static String random(double percent) {
        return "'randomFlutter':{'rmsPercent':%s,'lowHz':0.5,'highHz':120}".formatted(percent);
    }

    /** The description says how much there is in the whole band; within 5 % and 0.005 %. */
    @ParameterizedTest
    @CsvSource({"0.05, 0", "0.1, 0.3", "0.3, 0.15"})
    void scrapeOfAMachineIsRead(double percent, double flutter) {
        Speed speed =
                measured(
                        ",'transport':{%s,%s},'hiss':{'levelDb':-58}"
                                .formatted(scrape(percent, 200, 1500), random(flutter)));
        Quantity found = speed.scrapeFlutter();
        System.out.printf("scrape flutter of %.3f %%: %s%n", percent, found);
        assertTrue(found.isKnown(), found.reason());
        assertEquals(percent, found.value(), 0.05 * percent + 0.005);
        assertTrue(found.uncertainty() < 0.05 * percent + 0.005);
        assertArrayEquals(new double[] {200, 1500}, speed.scrapeBandHz());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-45, -50, -58, -60})
    void noneIsInvented(double hiss) {
        Speed speed =
                measured(
                        ",'transport':{%s},'hiss':{'levelDb':%s},'modulationNoise':{'levelDb':-45}"
                                .formatted(random(0.3), hiss));
        assertFalse(speed.scrapeFlutter().isKnown(), speed.scrapeFlutter().toString());
        assertTrue(
                speed.scrapeFlutter().reason().startsWith("Scrape flutter does not stand out"),
                speed.scrapeFlutter().reason());
        System.out.println(hiss + ": " + speed.scrapeFlutter().reason());
    }
}
