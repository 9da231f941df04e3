package offtape.report.measure;

import static offtape.report.measure.MadeResults.NO;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Programme;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.mode.ModeQuestion;
import offtape.report.measure.pass.PassMeasure;
import offtape.report.measure.pass.PassReading;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which part of a programme tells what, by programmes of a few seconds at 8 kHz. */
class MeasurementTest {

    private static final int RATE = BriefProgramme.RATE;
    private static final double[] FLAT = {50, 4000};

    private static final Session SESSION =
            new Session("Deck", null, null, "reference-tape", "", null, "", "");

    private static Results measured(Programme programme, Capture capture, double[]... sound) {
        return new Measurement(BriefProgramme.returned(programme, sound))
                .results(SESSION, capture, List.of());
    }

    private static Results measured(Programme programme, double[]... sound) {
        return measured(programme, Capture.of(CaptureMode.REFERENCE_TAPE), sound);
    }

    private static Results measured(Programme programme) {
        return measured(programme, BriefProgramme.sound(programme, 0.5, 0.4));
    }

    private static List<String> codes(Results results) {
        return results.health().stream().map(HealthNote::code).toList();
    }

    private static Capture through(CaptureMode mode, KnownInterface known) {
        return new Capture(mode, ModeQuestion.NOBODY, null, known, 1);
    }

    /** An interface that turns everything by an angle on the channels named. */
    private static KnownInterface known(
            int rateHz, Programme programme, double degrees, String... channels) {
        double[] zero = new double[FLAT.length];
        double[] turned = {degrees, degrees};
        InterfaceFigures.Curve curve = new InterfaceFigures.Curve(FLAT, zero, turned, zero);
        return KnownInterface.of(
                new LoopbackSession(
                        "loop/results.json",
                        rateHz,
                        BriefProgramme.digest(programme),
                        new LoopbackUse("2024-05-01T10:00:00Z", "0".repeat(64)),
                        new InterfaceFigures(
                                NO,
                                null,
                                NO,
                                NO,
                                NO,
                                Stream.of(channels)
                                        .map(
                                                name ->
                                                        new InterfaceFigures.Channel(
                                                                name, -18.0, NO, curve, NO, NO, NO,
                                                                null, List.of(), List.of(),
                                                                List.of()))
                                        .toList())));
    }

    /** A reference tone, a silence, two sweeps on both channels and one on the left, a ladder. */
    private static Programme full() {
        return new BriefProgramme()
                .reference()
                .silence()
                .sweep(ChannelSet.BOTH, -10)
                .sweep(ChannelSet.BOTH, -20)
                .sweep(ChannelSet.LEFT, -20)
                .ladder()
                .made();
    }

    @Test
    void eachPartTellsWhatItIsFor() {
        Programme programme = full();
        Results results =
                new Measurement(
                                BriefProgramme.returned(
                                        programme, BriefProgramme.sound(programme, 0.5, 0.4)))
                        .results(
                                SESSION,
                                Capture.of(CaptureMode.REFERENCE_TAPE),
                                List.of("It is odd.", "It is short."));
        assertSession(results, programme);
        // what is said of the file is a warning
        assertEquals(
                List.of(
                        new HealthNote("warning", "file", "It is odd."),
                        new HealthNote("warning", "file", "It is short.")),
                results.health().stream().filter(n -> n.code().equals("file")).toList());
        assertEquals(1000, results.speed().toneFrequencyHz());
        assertEquals(0, results.speed().deviation().value(), 0.001);
        assertEquals(
                List.of("left -10.0", "right -10.0", "left -20.0", "right -20.0"),
                results.response().stream().map(r -> r.channel() + " " + r.levelDb()).toList());
        // harmonics are those of the loudest sweep
        assertEquals(
                List.of(true, true, false, false),
                results.response().stream().map(r -> !r.harmonics().isEmpty()).toList());
        assertEquals(
                List.of("left", "right"),
                results.distortion().stream().map(Distortion::channel).toList());
        assertTrue(results.noise().stream().allMatch(n -> n.spectrum() != null));
        assertEquals(-20 * Math.log10(0.5 / 0.4), results.channels().balance().value(), 0.01);
        assertTrue(results.channels().interchannelDelay().isKnown());
        assertEquals("normal", results.timing().polarity());
        assertEquals(
                List.of("left", "right"), results.losses().stream().map(l -> l.channel()).toList());
    }

    private static void assertSession(Results results, Programme programme) {
        assertEquals("Deck", results.session().machineName());
        assertEquals(RATE, results.session().recordingSampleRate());
        assertEquals(BriefProgramme.digest(programme), results.session().programmeSha256());
        assertEquals(-18, results.session().referenceDbfs());
        assertEquals("reference-tape", results.session().mode());
        assertNull(results.session().loopback());
        assertNull(results.verdict().decision());
        assertEquals("No limits were applied to these figures.", results.verdict().reason());
    }

    /** Any of the three is worth a report; what is missing is not known and has a reason. */
    @Test
    void oneOfToneSweepAndLadderIsEnough() {
        Results tone = measured(new BriefProgramme().tone(3000, 5 * RATE / 2).made());
        assertTrue(tone.speed().deviation().isKnown());
        assertEquals(List.of(), tone.response());
        assertEquals(List.of(), tone.distortion());
        assertTrue(codes(tone).contains("no-reference"));
        assertFalse(tone.noise().get(0).aWeighted().isKnown());
        Results ladder = measured(new BriefProgramme().ladder().made());
        assertEquals(2, ladder.distortion().size());
        assertFalse(ladder.speed().deviation().isKnown());
        Results sweep = measured(new BriefProgramme().sweep(ChannelSet.BOTH, -10).made());
        assertEquals(2, sweep.response().size());
        assertFalse(sweep.channels().balance().isKnown());
    }

    @Test
    void withoutAllOfThemNothingIsTold() {
        Programme programme =
                new BriefProgramme().silence().sweep(ChannelSet.LEFT, -10).tone(1000, RATE).made();
        String said =
                assertThrows(UnusableInputException.class, () -> measured(programme)).getMessage();
        assertTrue(said.startsWith("return.wav is cut short beyond use"), said);
    }

    /**
     * A mode that nobody said and the recording does not show is not known; it has no figures of
     * its own.
     */
    @Test
    void theModeDecidesWhatIsTold() {
        Programme programme = new BriefProgramme().ladder().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.4);
        Results unsaid = measured(programme, Capture.unsaid(), sound);
        assertNull(unsaid.session().mode());
        assertNull(unsaid.speed().transport());
        Results offTape = measured(programme, Capture.of(CaptureMode.OFF_TAPE), sound);
        assertEquals("off-tape", offTape.session().mode());
        assertNotNull(offTape.speed().transport());
        assertNull(offTape.interfaceFigures());
        Results loopback = measured(programme, Capture.of(CaptureMode.LOOPBACK), sound);
        assertEquals("loopback", loopback.session().mode());
        assertEquals(2, loopback.interfaceFigures().channels().size());
    }

    /** Of two sweeps the right channel is late by 2 and by 1 of 8000 frames: 250 and 125 µs. */
    @Test
    void theDelayBetweenTheChannelsIsThatOfTheQuietestSweep() {
        Programme programme =
                new BriefProgramme().sweep(ChannelSet.BOTH, -10).sweep(ChannelSet.BOTH, -20).made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        int middle = RATE / 4 + RATE + RATE / 8;
        double[] late = new double[sound[1].length];
        for (int i = 2; i < late.length; i++) {
            late[i] = sound[1][i - (i < middle ? 2 : 1)];
        }
        Quantity delay = measured(programme, sound[0], late).channels().interchannelDelay();
        assertEquals(125, delay.value(), 3);
    }

    /** A channel that holds noise alone, which grows, says nothing of levels or of the response. */
    @ParameterizedTest
    @CsvSource({"0, left", "1, right"})
    void aDeadChannelHasNoFigures(int dead, String name) {
        Programme programme =
                new BriefProgramme().marker().sweep(ChannelSet.BOTH, -10).ladder().marker().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        sound[dead] = BriefProgramme.sound(programme, 0, 0)[dead];
        for (int i = sound[dead].length / 2; i < sound[dead].length; i++) {
            sound[dead][i] *= 3;
        }
        Results results = measured(programme, sound);
        assertTrue(codes(results).contains("dead-channel"));
        assertFalse(codes(results).contains("level-changes"));
        Response response =
                results.response().stream()
                        .filter(r -> r.channel().equals(name))
                        .findFirst()
                        .orElseThrow();
        assertEquals(0, response.frequencyHz().length);
        assertEquals("The " + name + " channel is dead.", response.upperEdge().reason());
        assertEquals(2, results.response().size());
        List<Distortion> ladders =
                results.distortion().stream().filter(d -> d.channel().equals(name)).toList();
        assertEquals(1, ladders.size());
        assertEquals(List.of(), ladders.get(0).steps());
        assertEquals(
                "The " + name + " channel is dead.", ladders.get(0).maximumOutputLevel().reason());
        assertEquals(2, results.distortion().size());
    }

    /** The second of two tones is 50 µs later on the right channel than the first. */
    @ParameterizedTest
    @CsvSource({"1000, true", "3000, false"})
    void theChannelsAreHeldAgainstEachOtherWhereThereIsAReference(double hz, boolean told) {
        Programme programme = new BriefProgramme().tone(hz, 5 * RATE / 2).tone(hz, RATE).made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        double peak = 0.5 * Math.pow(10, -18 / 20.0);
        for (int i = 23 * RATE / 8; i < sound[1].length; i++) {
            sound[1][i] = peak * Math.sin(2 * Math.PI * hz * ((double) i / RATE - 5e-5));
        }
        assertEquals(told, codes(measured(programme, sound)).contains("channels-shift"));
    }

    /** A tenth of the amplitude is 20 dB less, here for 40 ms from 1.5 s on. */
    @Test
    void aDropoutIsTold() {
        Programme programme = new BriefProgramme().tone(1000, 9 * RATE / 2).made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        for (int i = 0; i < 40 * RATE / 1000; i++) {
            sound[0][3 * RATE / 2 + i] *= 0.1;
        }
        Results results = measured(programme, sound);
        assertEquals(1, results.dropouts().size());
        assertEquals("left", results.dropouts().get(0).channel());
        assertEquals(1.5, results.dropouts().get(0).atSeconds(), 0.005);
        assertEquals(20, results.dropoutSummary().deepest().value(), 1);
    }

    /** Frames that are missing in the middle of a tone make what follows early. */
    @Test
    void aJumpOfTimeIsTold() {
        BriefProgramme tones = new BriefProgramme().ladder();
        for (int i = 0; i < 5; i++) {
            tones.tone(1000, RATE / 2);
        }
        Programme programme = tones.made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        double[][] cut = new double[2][];
        for (int c = 0; c < 2; c++) {
            cut[c] = sound[c].clone();
            int from = 13 * RATE / 4;
            System.arraycopy(sound[c], from + 163, cut[c], from, sound[c].length - from - 163);
        }
        Measurement measurement = new Measurement(BriefProgramme.returned(programme, cut));
        List<HealthNote> jumps = measurement.jumps();
        assertEquals(List.of("xrun"), jumps.stream().map(HealthNote::code).toList());
        Results results = measurement.results(SESSION, Capture.unsaid(), List.of());
        assertTrue(results.health().containsAll(jumps), results.health().toString());
        assertEquals(List.of(), new Measurement(BriefProgramme.returned(programme, sound)).jumps());
    }

    /** An inverted return of an interface that inverts is one of a machine that does not. */
    @Test
    void polarityIsThatOfTheMachineAlone() {
        Programme programme = new BriefProgramme().sweep(ChannelSet.BOTH, -10).made();
        double[][] sound = BriefProgramme.sound(programme, -0.5, -0.5);
        Measurement measurement = new Measurement(BriefProgramme.returned(programme, -1, 0, sound));
        Capture plain = Capture.of(CaptureMode.REFERENCE_TAPE);
        Results heard = measurement.results(SESSION, plain, List.of());
        assertEquals("inverted", heard.timing().polarity());
        assertNull(heard.interfaceShare());
        Capture known =
                through(CaptureMode.REFERENCE_TAPE, known(RATE, programme, 180, "left", "right"));
        Results without = measurement.results(SESSION, known, List.of());
        assertEquals("normal", without.timing().polarity());
        assertEquals("2024-05-01T10:00:00Z", without.session().loopback().madeAt());
        assertEquals(2, without.interfaceShare().responses().size());
        assertEquals(2, without.losses().size());
    }

    @Test
    void aLoopbackThatWasMadeOtherwiseIsRefused() {
        Programme programme = new BriefProgramme().ladder().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        KnownInterface otherRate = known(48_000, programme, 0, "left", "right");
        assertRefused(
                "The loopback loop/results.json was recorded at 48000 frames a second",
                programme,
                CaptureMode.OFF_TAPE,
                otherRate,
                sound);
        KnownInterface same = known(RATE, programme, 0, "left", "right");
        assertRefused(
                "return.wav is itself a loopback", programme, CaptureMode.LOOPBACK, same, sound);
    }

    /**
     * What the loopback did not hear cannot be taken out, unless there is nothing to take it of.
     */
    @Test
    void aLoopbackMustHaveHeardWhatIsHeard() {
        Programme programme = new BriefProgramme().ladder().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        KnownInterface left = known(RATE, programme, 0, "left");
        assertRefused(
                "In the loopback loop/results.json the right channel is dead or missing",
                programme,
                CaptureMode.OFF_TAPE,
                left,
                sound);
        sound[1] = new double[sound[0].length];
        Capture capture = through(CaptureMode.OFF_TAPE, left);
        assertTrue(codes(measured(programme, capture, sound)).contains("loopback-used"));
        Programme high = new BriefProgramme().tone(3000, 5 * RATE / 2).made();
        Capture unreferenced = through(CaptureMode.OFF_TAPE, known(RATE, high, 0, "left"));
        Results results = measured(high, unreferenced, BriefProgramme.sound(high, 0.5, 0.5));
        assertTrue(codes(results).contains("loopback-used"));
    }

    private static void assertRefused(
            String begins,
            Programme programme,
            CaptureMode mode,
            KnownInterface known,
            double[]... sound) {
        Capture capture = through(mode, known);
        String said =
                assertThrows(
                                UnusableInputException.class,
                                () -> measured(programme, capture, sound))
                        .getMessage();
        assertTrue(said.startsWith(begins), said);
    }

    @Test
    void aReplayIsNamed() {
        Programme programme = new BriefProgramme().ladder().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        Measurement measurement = new Measurement(BriefProgramme.returned(programme, sound));
        PassReading one = measurement.pass("one.wav", "1".repeat(64), List.of("It is odd."));
        PassReading two = measurement.pass("two.wav", "2".repeat(64), List.of());
        Results all =
                PassMeasure.added(
                        MadeResults.of(
                                MadeResults.timing(NO, NO),
                                List.of(),
                                List.of(),
                                List.of(),
                                MadeResults.pair(NO, NO, NO)),
                        List.of(one, two));
        assertEquals(
                List.of("one.wav", "two.wav"),
                all.speed().passes().readings().stream().map(p -> p.file()).toList());
        assertTrue(all.health().stream().anyMatch(n -> n.message().contains("It is odd.")));
    }

    /** Wow of 0.3 % and half of flutter of 0.8 % are 0.5 % together, five thousandths. */
    @Test
    void aSweepSeesWowAndHalfOfTheFlutter() {
        Quantity wow = Quantity.known(0.3, "%", 0.01);
        Quantity flutter = Quantity.known(0.8, "%", 0.01);
        assertEquals(0.005, Measurement.unsteadiness(speed(wow, flutter)), 1e-12);
        assertEquals(0, Measurement.unsteadiness(speed(NO, flutter)));
        assertEquals(0, Measurement.unsteadiness(speed(wow, NO)));
    }

    private static Speed speed(Quantity wow, Quantity flutter) {
        return new Speed(
                null, null, null, null, null, null, null, wow, flutter, null, null, List.of(), null,
                null, null, null, null, null, null, null, null, List.of());
    }

    /** Half a second before the programme; what is on the third channel and the fourth is not. */
    @Test
    void theFirstTwoOfMoreChannelsAreMeasured() {
        Programme programme = new BriefProgramme().marker().ladder().marker().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.4);
        double[][] four = new double[4][RATE / 2 + sound[0].length];
        for (int c = 0; c < 2; c++) {
            System.arraycopy(sound[c], 0, four[c], RATE / 2, sound[c].length);
        }
        Results results =
                Measurement.run(
                        programme,
                        new MemoryAudio("four.wav", RATE, four),
                        SESSION,
                        Capture.of(CaptureMode.REFERENCE_TAPE),
                        List.of());
        assertEquals(500, results.timing().delay().value(), 0.1);
        assertEquals(-20 * Math.log10(0.5 / 0.4), results.channels().balance().value(), 0.01);
        assertTrue(codes(results).contains("more-channels"));
    }
}
