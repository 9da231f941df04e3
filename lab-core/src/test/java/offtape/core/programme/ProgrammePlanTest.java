package offtape.core.programme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.core.unit.TapeSpeed;
import offtape.reference.Schemas;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ProgrammePlanTest {

    static Stream<ProgrammePlan> plans() {
        return DoubleStream.of(23.8125, 47.625, 95.25, 190.5, 381, 762)
                .mapToObj(TapeSpeed::new)
                .flatMap(
                        v ->
                                Stream.of(44_100, 48_000, 88_200, 96_000, 192_000)
                                        .flatMap(
                                                rate ->
                                                        Stream.of(
                                                                new ProgrammePlan(
                                                                        v, rate, -18, false),
                                                                new ProgrammePlan(
                                                                        v, rate, -14, true))));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void partsFollowOneAnotherWithGaps(ProgrammePlan plan) {
        CueSheet sheet = plan.sheet();
        long free = Math.round(0.2 * plan.sampleRateHz());
        // Only the first marker begins at once, so that wow before it stays small.
        long end = sheet.cues().get(0).startFrame() - free;
        assertTrue(end + free > 0 && end + free <= 0.05 * plan.sampleRateHz());
        for (Cue cue : sheet.cues()) {
            assertTrue(cue.startFrame() >= end + free, cue.id() + " begins too early");
            assertTrue(cue.frames() >= 0.2 * plan.sampleRateHz(), cue.id() + " is too short");
            end = cue.endFrame();
        }
        assertTrue(sheet.frames() >= end + free);
        Set<String> ids = sheet.cues().stream().map(Cue::id).collect(Collectors.toSet());
        assertEquals(sheet.cues().size(), ids.size(), "ids repeat");
        assertEquals("start", sheet.cues().get(0).id());
        assertEquals("end", sheet.cues().get(sheet.cues().size() - 1).id());
        assertEquals(2, sheet.cues(Cue.Marker.class).count());
    }

    @ParameterizedTest
    @MethodSource("plans")
    void lastsAsLongAsStated(ProgrammePlan plan) {
        CueSheet sheet = plan.sheet();
        double seconds = sheet.seconds(sheet.frames());
        assertTrue(plan.brief() ? seconds < 75 : seconds > 150 && seconds < 300, seconds + " s");
    }

    @ParameterizedTest
    @MethodSource("plans")
    @Source("IEC 60386: 3150 Hz")
    void holdsASpeedTone(ProgrammePlan plan) {
        Cue.Tone speed = tone(plan, "speed");
        assertEquals(3150, speed.frequencyHz(), 0);
        assertEquals(ChannelSet.BOTH, speed.channels());
        double seconds = plan.sheet().seconds(speed.frames());
        assertTrue(seconds >= (plan.brief() ? 20 : 60), seconds + " s");
    }

    /** At the slow speeds 1 kHz is too short a wave on the tape: 315 Hz takes its place. */
    @ParameterizedTest
    @CsvSource({"23.8125, 315", "47.625, 315", "95.25, 315", "190.5, 1000", "381, 1000"})
    @Source("IEC 60094-1: 315 Hz at 4.76 and 9.53 cm/s (from memory)")
    void slowTapeTakesALowerReference(double mmPerS, double hz) {
        ProgrammePlan plan = new ProgrammePlan(new TapeSpeed(mmPerS), 48_000, -18, false);
        assertEquals(hz, plan.midHz(), 0);
        assertEquals(hz, tone(plan, "reference").frequencyHz(), 0);
        assertEquals(0, tone(plan, "reference").levelDb(), 0);
        List<Double> ladders =
                plan.sheet().cues(Cue.Ladder.class).map(Cue.Ladder::frequencyHz).toList();
        assertEquals(List.of(hz, 10_000.0), ladders);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void sweepsAreAtTwoLevelsAndStayBelowHalfTheRate(ProgrammePlan plan) {
        List<Cue.Sweep> both =
                plan.sheet()
                        .cues(Cue.Sweep.class)
                        .filter(s -> s.channels() == ChannelSet.BOTH)
                        .toList();
        assertEquals(List.of(-20.0, 0.0), both.stream().map(Cue.Sweep::levelDb).toList());
        for (Cue.Sweep s : both) {
            assertTrue(s.startHz() <= 20 && s.endHz() >= 20_000);
            assertTrue(1.03 * s.endHz() < plan.sampleRateHz() / 2.0, "folds at 3 % fast");
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void laddersReachFromMinusTwentyToFourteen(ProgrammePlan plan) {
        for (Cue.Ladder ladder : plan.sheet().cues(Cue.Ladder.class).toList()) {
            List<Cue.Step> steps = ladder.steps();
            long end = ladder.startFrame();
            double level = -22;
            for (Cue.Step step : steps) {
                assertTrue(step.startFrame() >= end);
                assertEquals(level + 2, step.levelDb(), 0);
                level = step.levelDb();
                end = step.startFrame() + step.frames();
            }
            assertEquals(14, level, 0);
            assertEquals(ladder.endFrame(), end);
            assertTrue(plan.sheet().peakOf(level) <= 1, "over full scale");
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void writtenSheetKeepsTheSchemaAndReadsBackEqual(ProgrammePlan plan) {
        CueSheet sheet = plan.sheet();
        String json = CueSheetJson.write(sheet);
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.programme())
                        .validate(json, InputFormat.JSON));
        assertEquals(sheet, CueSheetJson.parse(json, "programme.json"));
        assertEquals(json, CueSheetJson.write(CueSheetJson.parse(json, "programme.json")));
        assertTrue(json.endsWith("}\n"));
    }

    @ParameterizedTest
    @MethodSource
    void refusesWhatCannotBeKept(int rate, double referenceDbfs, String sentence) {
        TapeSpeed speed = new TapeSpeed(190.5);
        Exception e =
                assertThrows(
                        IllegalArgumentException.class,
                        () -> new ProgrammePlan(speed, rate, referenceDbfs, false));
        assertEquals(sentence, e.getMessage());
    }

    static Stream<Arguments> refusesWhatCannotBeKept() {
        String rate = "The sample rate must lie between 44100 and 192000 Hz, not ";
        String level =
                "The reference level must lie between -40 and -14 dBFS, so that the loudest tone (14"
                        + " dB above it) stays within full scale.";
        return Stream.of(
                Arguments.of(44_099, -18, rate + "44099."),
                Arguments.of(192_001, -18, rate + "192001."),
                Arguments.of(0, -18, rate + "0."),
                Arguments.of(48_000, -13.99, level),
                Arguments.of(48_000, -40.01, level),
                Arguments.of(48_000, Double.NaN, level));
    }

    @Test
    void stepsOfTheBriefLadderHoldEnoughCycles() {
        ProgrammePlan plan = new ProgrammePlan(new TapeSpeed(47.625), 44_100, -18, true);
        Cue.Ladder mid = plan.sheet().cues(Cue.Ladder.class).findFirst().orElseThrow();
        assertTrue(mid.steps().get(0).frames() / 44_100.0 * mid.frequencyHz() > 100);
    }

    private static Cue.Tone tone(ProgrammePlan plan, String id) {
        return plan.sheet()
                .cues(Cue.Tone.class)
                .filter(t -> t.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
