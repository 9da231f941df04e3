package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.Quantity;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tones of 1 and 2.5 kHz at −20 dB, each channel written by formula, and made-up sweeps. */
class SelfCheckTest {

    private static final int RATE = StraightReturn.RATE;
    private static final double[] HZ = {200, 1000, 2500, 3000};

    private static final Quantity UNREAD = Quantity.unknown("Unread.");

    private static ReferenceLevels heard(double... peaks) {
        return new ReferenceLevels(
                StraightReturn.tone("first"), peaks, Complex.ZERO, new double[peaks.length]);
    }

    /** The programme with its tone of 2.5 kHz raised, dB. */
    private static double[] sound(double gain, double highDb) {
        double[] x = StraightReturn.sound();
        for (int i = 0; i < x.length; i++) {
            boolean isHigh = i >= 5.9 * RATE && i < 7.6 * RATE;
            x[i] *= gain * (isHigh ? Math.pow(10, highDb / 20) : 1);
        }
        return x;
    }

    private static Response sweep(
            String channel, double levelDb, double[] hz, double uncertaintyDb, double... db) {
        double[] uncertainty = new double[hz.length];
        Arrays.fill(uncertainty, uncertaintyDb);
        Quantity none = Quantity.unknown("Not of this test.");
        return new Response(
                channel,
                levelDb,
                hz,
                db,
                uncertainty,
                none,
                none,
                none,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    private static List<HealthNote> notes(double[][] channels, Response... sweeps) {
        return new SelfCheck(StraightReturn.of(channels)).notes(List.of(sweeps), Leakage.NONE);
    }

    /** Two tones of 1 kHz and one of 2.5 kHz on each of two channels are six comparisons. */
    @Test
    void whatAgreesIsToldOnce() {
        List<HealthNote> notes =
                notes(
                        new double[][] {sound(0.5, -2), sound(0.4, 1)},
                        sweep("left", -20, HZ, 0.1, 0, 0, -2, -3),
                        sweep("right", -20, HZ, 0.1, 0, 0, 1.1, 2));
        assertEquals(1, notes.size(), notes.toString());
        assertEquals("note", notes.get(0).severity());
        assertEquals("self-check", notes.get(0).code());
        assertEquals(
                "Sweep and steady tones agree within 0.10 dB in 6 comparisons.",
                notes.get(0).message());
    }

    /** Twice the sweep's uncertainty and 0.15 dB are allowed: 0.35 dB. */
    @ParameterizedTest
    @CsvSource({"0.34, false", "0.36, true", "-0.34, false", "-0.36, true"})
    void whatDiffersByMoreThanIsAllowedIsTold(double differs, boolean told) {
        List<HealthNote> notes =
                notes(
                        new double[][] {sound(1, 0), sound(1, -2 + differs)},
                        sweep("right", -20, HZ, 0.1, 0, 0, -2, -2));
        assertEquals(told ? "sweep-and-tones-differ" : "self-check", notes.get(0).code());
        if (told) {
            String said = notes.get(0).message();
            String by = differs > 0 ? "+0.36" : "-0.36";
            assertTrue(said.startsWith("At 2500 Hz on the right channel"), said);
            assertTrue(said.contains("reads " + by + " dB against the sweep"), said);
            assertEquals("warning", notes.get(0).severity());
            assertEquals(1, notes.size());
        }
    }

    /**
     * Between two points the sweep is straight over the logarithm: 2500 Hz is half way from 2000 to
     * 3125 Hz, and −2 dB half way from −1 to −3 dB.
     */
    @Test
    void theSweepIsReadBetweenItsPoints() {
        List<HealthNote> notes =
                notes(
                        new double[][] {sound(1, -2)},
                        sweep("left", -20, new double[] {500, 1000, 2000, 3125}, 0, 0, 0, -1, -3));
        assertEquals(
                "Sweep and steady tones agree within 0.00 dB in 3 comparisons.",
                notes.get(0).message());
    }

    /** Tones at or beyond the ends of what the sweep tells, or of another level, say nothing. */
    @Test
    void onlyWhatBothToldIsCompared() {
        double[][] one = {sound(1, 0)};
        double[] upTo = {500, 1500, 2500};
        assertTrue(
                notes(one, sweep("left", -20, upTo, 0, 0, 0, 0)).get(0).message().contains("in 2"));
        double[] from = {1000, 2000, 3000};
        assertTrue(
                notes(one, sweep("left", -20, from, 0, 0, 0, 0)).get(0).message().contains("in 1"));
        assertEquals(List.of(), notes(one, sweep("left", -19.5, HZ, 0, 0, 0, 0, 0)));
        assertEquals(1, notes(one, sweep("left", -19.6, HZ, 0, 0, 0, 0, 0)).size());
        assertEquals(List.of(), notes(one, sweep("left", -20, new double[0], 0)));
    }

    /** Without its tone of 1 kHz nothing has a zero: here it is drowned. */
    @Test
    void withoutAClearToneAtOneKilohertzNothingIsCompared() {
        double[] x = sound(1, 0);
        Arrays.fill(x, 0, 11 * RATE / 2 + RATE / 4, 0);
        assertEquals(List.of(), notes(new double[][] {x}, sweep("left", -20, HZ, 0, 0, 0, 0, 0)));
    }

    /** A leak of a tenth makes the tone a tenth too loud, 0.83 dB, unless it is known. */
    @Test
    void whatLeaksInIsTakenOut() {
        double[] left = sound(1, 0);
        double[] right = sound(1, 0);
        double[] heard = new double[left.length];
        for (int i = 0; i < heard.length; i++) {
            boolean isHigh = i >= 5.9 * RATE && i < 7.6 * RATE;
            heard[i] = left[i] + (isHigh ? 0.1 : 0) * right[i];
        }
        SelfCheck check = new SelfCheck(StraightReturn.of(heard, right));
        List<Response> flat = List.of(sweep("left", -20, HZ, 0.01, 0, 0, 0, 0));
        String said = check.notes(flat, Leakage.NONE).get(0).message();
        assertTrue(said.contains("+0.83 dB"), said);
        Leakage known = new Leakage(Leakage.Leak.NONE, new Leakage.Leak(new Complex(0.1, 0), 1000));
        String without = check.notes(flat, known).get(0).message();
        // the tones of 1 kHz held no leak, so now they are too low by the same
        assertTrue(without.contains("+0.92 dB"), without);
    }

    /** At −20 dB re −18 dBFS; the second tone is 4 µs late and 0.6 dB weak on the right. */
    @Test
    void whatChangesBetweenTheChannelsIsTold() {
        double[] left = sound(1, 0);
        double[] right = sound(1, 0);
        for (int i = (int) (3.8 * RATE); i < 5.7 * RATE; i++) {
            double t = (double) i / RATE - 4e-6;
            right[i] = Math.pow(10, (-38 - 0.6) / 20) * Math.sin(2 * Math.PI * 1000 * t);
        }
        List<HealthNote> notes =
                new SelfCheck(StraightReturn.of(left, right)).ofTake(UNREAD, heard(1, 1));
        assertEquals(
                List.of("channels-shift", "balance-changes"),
                notes.stream().map(HealthNote::code).toList());
        String shift = notes.get(0).message();
        // the tones last 1.5 s from 2 s and from 4 s on
        assertTrue(shift.contains("+4.00 µs between 2.8 s and 4.8 s"), shift);
        assertTrue(notes.get(1).message().contains("-0.60 dB"), notes.get(1).message());
    }

    /**
     * The second tone comes 4 µs later on the right than the first; the last marker 5 ms late and 3
     * dB weaker on both channels. With a dead channel no pair is left, without a reference no level
     * either.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 1, 'channels-shift, markers-disagree, level-changes, level-changes'",
        "0, 1, 'markers-disagree, level-changes'",
        "1, 0, 'markers-disagree, level-changes'"
    })
    void aDeadChannelLeavesTheTimeAndItsFellowsLevel(double left, double right, String codes) {
        List<HealthNote> notes = takeNotes(heard(left, right));
        assertEquals(codes, notes.stream().map(HealthNote::code).collect(Collectors.joining(", ")));
        String level = notes.get(notes.size() - 1).message();
        String living = right > 0 ? "right" : "left";
        assertTrue(level.contains("-3.0 dB against the first on the " + living), level);
        assertEquals(
                List.of("markers-disagree"),
                takeNotes(null).stream().map(HealthNote::code).toList());
    }

    private static List<HealthNote> takeNotes(ReferenceLevels reference) {
        Programme programme =
                new BriefProgramme().marker().tone(1000, RATE).tone(1000, RATE).marker().made();
        double[][] sound = BriefProgramme.sound(programme, 0.5, 0.5);
        double peak = 0.5 * Math.pow(10, -18 / 20.0);
        // the second tone lasts a second from 2.25 s on, the marker begins a quarter later
        for (int i = 17 * RATE / 8; i < 27 * RATE / 8; i++) {
            double t = (double) i / RATE - 4e-6;
            sound[1][i] = peak * Math.sin(2 * Math.PI * 1000 * t);
        }
        for (int i = 27 * RATE / 8; i < sound[0].length; i++) {
            sound[0][i] *= Math.pow(10, -3 / 20.0);
            sound[1][i] *= Math.pow(10, -3 / 20.0);
        }
        return new SelfCheck(BriefProgramme.returned(programme, 1, 0.005, sound))
                .ofTake(UNREAD, reference);
    }

    /**
     * A tone, one on the left alone, one of eleven seconds, then steps of −20 and −10 dB, last a
     * step on the left alone.
     */
    private static final CueSheet MANY =
            new CueSheet(
                    RATE,
                    21 * RATE,
                    -18,
                    null,
                    List.of(
                            many("first", ChannelSet.BOTH, 2, 1.5),
                            many("alone", ChannelSet.LEFT, 4, 1.5),
                            many("long", ChannelSet.BOTH, 6, 11),
                            new Cue.Ladder(
                                    "steps",
                                    ChannelSet.BOTH,
                                    35L * RATE / 2,
                                    2L * RATE,
                                    1000,
                                    List.of(
                                            new Cue.Step(35L * RATE / 2, RATE, -20),
                                            new Cue.Step(37L * RATE / 2, RATE, -10))),
                            new Cue.Ladder(
                                    "left-steps",
                                    ChannelSet.LEFT,
                                    79L * RATE / 4,
                                    RATE,
                                    1000,
                                    List.of(new Cue.Step(79L * RATE / 4, RATE, -20)))));

    private static Cue many(String id, ChannelSet channels, int from, double seconds) {
        return new Cue.Tone(
                id, channels, (long) from * RATE, Math.round(seconds * RATE), 1000, -20);
    }

    /** What returns of it where the right channel is 4 µs late between two moments. */
    private static SelfCheck lateBetween(double fromSeconds, double toSeconds) {
        double[][] sound = new ProgrammeSignal(MANY).read(0, (int) MANY.frames());
        Programme programme = new Programme(MANY, new MemoryAudio("p.wav", RATE, sound));
        double[] late = sound[0].clone();
        for (int i = (int) (fromSeconds * RATE); i < toSeconds * RATE; i++) {
            boolean isLoud = i >= 18.5 * RATE && i < 19.5 * RATE;
            double peak = Math.pow(10, (isLoud ? -28 : -38) / 20.0);
            late[i] = peak * Math.sin(2 * Math.PI * 1000 * ((double) i / RATE - 4e-6));
        }
        return new SelfCheck(BriefProgramme.returned(programme, sound[0], late));
    }

    /** Brief tones on both channels count, and steps that sound at a level of one of them. */
    @ParameterizedTest
    @CsvSource({
        "1.8, 3.8, true",
        "3.9, 17.2, false",
        "17.4, 18.5, true",
        "18.5, 19.6, false",
        "19.7, 20.8, false",
    })
    void onlyWhatIsAlikeIsHeldAgainstEachOther(double from, double to, boolean told) {
        List<String> codes =
                lateBetween(from, to).ofTake(UNREAD, heard(1, 1)).stream()
                        .map(HealthNote::code)
                        .toList();
        assertEquals(told ? List.of("channels-shift") : List.of(), codes);
    }

    /** Of those tones the sweep is held against the first alone, on either channel. */
    @Test
    void longToneAndToneOfOneChannelAreNotComparedWithTheSweep() {
        List<HealthNote> notes =
                lateBetween(0, 0)
                        .notes(List.of(sweep("left", -20, HZ, 0.1, 0, 0, 0, 0)), Leakage.NONE);
        assertTrue(notes.get(0).message().endsWith("in 1 comparisons."), notes.toString());
    }

    /** Tones of nearly the sweep's level count, each against its own: both return as they went. */
    @Test
    void aToneIsHeldAgainstItsOwnLevel() {
        Programme programme =
                new BriefProgramme().tone(1000, RATE, -20).tone(2500, RATE, -20.4).made();
        double[][] sound = programme.audio().read(0, (int) programme.sheet().frames());
        List<HealthNote> notes =
                new SelfCheck(BriefProgramme.returned(programme, sound))
                        .notes(List.of(sweep("left", -20, HZ, 0, 0, 0, 0, 0)), Leakage.NONE);
        assertEquals(
                "Sweep and steady tones agree within 0.00 dB in 2 comparisons.",
                notes.get(0).message());
    }
}
