package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.StepNoise;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions written by hand, so that what is to come out is known. */
class CorrectorTest {

    private static final Quantity NONE = Quantity.unknown("Not told here.");

    @TempDir private Path folder;

    private static Results session(
            String mode, List<Response> responses, List<Distortion> ladders) {
        Session session =
                new Session("Deck", null, 190.5, mode, "", null, null, null)
                        .withRecording(48_000, "", -18.0);
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                session,
                null,
                null,
                responses,
                ladders,
                List.of(),
                null,
                List.of(),
                List.of(),
                Verdict.open("None."),
                null);
    }

    private static Response response(String channel, DoubleUnaryOperator db) {
        double[] hz = Grid.over(16, 22_000);
        double[] doubt = new double[hz.length];
        Arrays.fill(doubt, 0.02);
        double[] values = Arrays.stream(hz).map(db).toArray();
        return new Response(
                channel, -20, hz, values, doubt, NONE, NONE, NONE, 20, 20_000, List.of(), List.of(),
                null, List.of());
    }

    /** Compression of 1 dB at {@code oneDb}, ten times the decibels for each 10 dB more. */
    private static Distortion ladder(String channel, double hz, double oneDb) {
        double[] record = new double[18];
        Arrays.setAll(record, i -> -20 + 2 * i);
        double[] replay = Arrays.stream(record).map(l -> l - 3 - squeeze(l, oneDb)).toArray();
        List<LadderStep> steps =
                List.of(step(record[0], oneDb), step(record[9], oneDb), step(record[17], oneDb));
        return new Distortion(
                channel,
                hz,
                steps,
                NONE,
                NONE,
                Quantity.known(oneDb, "dB", 0.1),
                NONE,
                NONE,
                NONE,
                NONE,
                null,
                new FittedCurve(record, replay, new double[18], 0.5));
    }

    private static double squeeze(double levelDb, double oneDb) {
        return Math.pow(10, (levelDb - oneDb) / 10);
    }

    private static LadderStep step(double levelDb, double oneDb) {
        double squeezed = squeeze(levelDb, oneDb);
        return new LadderStep(
                levelDb,
                levelDb - 3 - squeezed,
                null,
                null,
                null,
                squeezed,
                null,
                false,
                new StepNoise(null, null, null, null, null, false));
    }

    private static double falling(double hz) {
        return hz < 2000 ? 0 : -2 * Math.log(hz / 2000) / Math.log(2);
    }

    private static Corrector corrector(Results results) {
        return new Corrector(
                results,
                "session",
                new CorrectionWish(null, List.of(8000), 12, 12, 1, false, List.of()));
    }

    /** At 10 kHz the machine falls by 2·log2(5) = 4.644 dB, which the filter gives back. */
    @Test
    void boostedHighsMustStayBelowWhatTheLadderTakesLessTheBoost() {
        Correction c =
                corrector(
                                session(
                                        "off-tape",
                                        List.of(
                                                response("left", CorrectorTest::falling),
                                                response("right", hz -> 0)),
                                        List.of(
                                                ladder("left", 10_000, 2),
                                                ladder("left", 1000, 8))))
                        .correction(List.of());
        Headroom left = c.headroom().get(0);
        assertEquals(2 - 4.644, left.highsBelow().value(), 0.01);
        assertEquals(-18 + 2 - 4.644, left.highsBelowDbfs().value(), 0.01);
        assertEquals(8, left.middleOneDbLevel().value(), 1e-9);
        // -8 dB with 6 dB of boost are 4 dB below what is compressed by 1 dB: 10^-0.4
        Headroom.Row row =
                left.rows().stream()
                        .filter(r -> r.programmeLevelDb() == -8 && r.boostDb() == 6)
                        .findFirst()
                        .orElseThrow();
        assertEquals(Math.pow(10, -0.4), row.compressionDb(), 0.02);
        // 6 + 12 dB are more than the ladder's 14 dB
        assertNull(left.rows().get(left.rows().size() - 1).compressionDb());
        Headroom right = c.headroom().get(1);
        assertFalse(right.highsBelow().isKnown());
        assertTrue(right.highsBelow().reason().contains("ladder"), right.highsBelow().reason());
        assertFalse(c.noise().get(0).aWeighted().isKnown());
        assertEquals(0, c.channels().get(1).mostGainDb(), 1e-9);
        assertEquals(2 * Math.log(7.5) / Math.log(2), c.channelsDiffer().value(), 0.1);
    }

    /**
     * A sine of 10 kHz with a peak of −10 dBFS is +8 dB re reference, 12.644 dB with the boost, and
     * the tape takes 2 dB: over by 10.644 dB.
     */
    @Test
    void musicIsHeldAgainstTheTape() {
        Corrector corrector =
                corrector(
                        session(
                                "off-tape",
                                List.of(response("left", CorrectorTest::falling)),
                                List.of(ladder("left", 10_000, 2), ladder("left", 1000, 8))));
        double[] sine = new double[48_000];
        Arrays.setAll(
                sine, i -> Math.pow(10, -0.5) * Math.sin(2 * Math.PI * 10_000 * i / 48_000.0));
        MusicCheck check = corrector.music(new MemoryAudio("sine", 48_000, sine));
        assertEquals(10.644, check.lowerForTape().value(), 0.05);
        assertEquals(-10, check.peakDbfs(), 0.2);
        assertEquals(-10 + 4.644, check.filteredPeakDbfs(), 0.7);
        MusicCheck.Channel left = check.channels().get(0);
        int band = Arrays.binarySearch(left.frequencyHz(), 9999);
        assertEquals(8, left.levelDb()[-band - 1], 0.01);
        assertEquals(2, left.limitDb()[-band - 1], 0.01);
    }

    @Test
    void oneChannelGivesAFilterOfOneChannelAndSaysSo() {
        Correction c =
                corrector(
                                session(
                                        "two-pass",
                                        List.of(response("right", CorrectorTest::falling)),
                                        List.of()))
                        .correction(List.of());
        assertEquals(1, c.filters().get(0).response().length);
        assertTrue(c.notes().get(0).contains("right channel only"), c.notes().toString());
        assertFalse(c.channelsDiffer().isKnown());
    }

    @Test
    void oneFilterForBothIsThatOfTheirMean() {
        CorrectionWish wish =
                new CorrectionWish(null, List.of(44_100, 8000), 12, 12, 2, true, List.of(2.0));
        Correction c =
                new Corrector(
                                session(
                                        "off-tape",
                                        List.of(
                                                response("left", CorrectorTest::falling),
                                                response("right", hz -> 0)),
                                        List.of()),
                                "session",
                                wish)
                        .correction(List.of());
        assertEquals(c.channels().get(0).gainDbAt(8000), c.channels().get(1).gainDbAt(8000));
        assertEquals(2, c.channels().get(0).gainDbAt(8000), 0.02);
        assertEquals(-2, c.channels().get(0).afterDb()[215], 0.1);
        assertEquals(
                List.of(44_100, 8000), c.filters().stream().map(FilterFile::sampleRateHz).toList());
    }

    @Test
    void whatHoldsNoMachineOrNoResponseIsRefused() throws IOException {
        List<Response> one = List.of(response("left", hz -> 0));
        Results loop = session("loopback", one, List.of());
        assertTrue(refusal(loop, null).contains("loopback session"));
        assertTrue(
                refusal(session("off-tape", List.of(), List.of()), null).contains("no frequency"));
        Path far = Files.writeString(folder.resolve("far.csv"), "30000,0\n40000,1\n");
        assertTrue(refusal(session("off-tape", one, List.of()), far).contains("wholly outside"));
    }

    private static String refusal(Results results, Path target) {
        CorrectionWish wish = new CorrectionWish(target, List.of(), 12, 12, 4, false, List.of());
        return assertThrows(
                        UnusableInputException.class, () -> new Corrector(results, "session", wish))
                .getMessage();
    }
}
