package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.MarkerSight;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TakeCheckTest {

    /** Four standard deviations are twice the expanded uncertainty; 2 ms are never a warning. */
    @ParameterizedTest
    @CsvSource({
        "0.0015, 0.0001, false",
        "0.0020, 0.0001, false",
        "-0.002, 0.0001, false",
        "0.0030, 0.0001, true",
        "0.0100, 0.0060, false",
        "-0.030, 0.0060, true"
    })
    void aMarkerOutOfTimeIsTold(double late, double doubt, boolean told) {
        List<HealthNote> notes = TakeCheck.time(new MarkerSight(60, late, doubt));
        assertEquals(told, !notes.isEmpty());
        if (told) {
            assertTrue(notes.get(0).message().contains(late > 0 ? "later" : "earlier"));
        }
    }

    /** 0.5 dB between the markers is no surprise; which channel changed is said. */
    @ParameterizedTest
    @CsvSource({"0, -0.45, ''", "0, -0.58, right", "0.58, 0, left", "0.45, 0, ''"})
    void theMarkersLevelsAreHeldAgainstEachOther(double leftDb, double rightDb, String told) {
        ProgrammeReturn ret = withEndMarkers(2, 0.3, endAt(leftDb, 0.5), endAt(rightDb, 0.2));
        List<HealthNote> notes = TakeCheck.notes(ret, c -> true);
        if (told.isEmpty()) {
            assertEquals(List.of(), notes);
        } else {
            assertEquals(List.of("level-changes"), notes.stream().map(HealthNote::code).toList());
            String by = leftDb > 0 ? "+0.6" : "-0.6";
            assertTrue(
                    notes.get(0)
                            .message()
                            .startsWith(
                                    "The last marker is "
                                            + by
                                            + " dB against the first on the "
                                            + told
                                            + " channel"),
                    notes.get(0).message());
        }
    }

    /** Whatever a dead channel holds, its fellow's level and the time are told. */
    @Test
    void aChannelWithoutALevelIsPassedOver() {
        ProgrammeReturn ret = withEndMarkers(2, 2.5, endAt(-3, 1), endAt(2, 1));
        List<String> said =
                TakeCheck.notes(ret, c -> c == 1).stream().map(HealthNote::message).toList();
        assertEquals(2, said.size());
        assertTrue(said.get(0).contains("2.5 ms later"), said.get(0));
        assertTrue(said.get(1).contains("+2.0 dB against the first on the right"), said.get(1));
    }

    /** The second marker may not have been heard; then nothing can be said of levels. */
    @Test
    void aMarkerThatWasNotHeardSaysNothingOfLevels() {
        ProgrammeReturn ret = withEndMarkers(1, 0.3, endAt(-3, 1), endAt(-3, 1));
        assertEquals(List.of(), TakeCheck.notes(ret, c -> true));
        assertEquals(
                2,
                TakeCheck.notes(withEndMarkers(2, 0.3, endAt(-3, 1), endAt(-3, 1)), c -> true)
                        .size());
    }

    @Test
    void theLastMarkersTimeIsAmongTheNotes() {
        ProgrammeReturn ret = withEndMarkers(2, 2.5, endAt(0, 1), endAt(0, 1));
        List<HealthNote> notes = TakeCheck.notes(ret, c -> true);
        assertEquals(List.of("markers-disagree"), notes.stream().map(HealthNote::code).toList());
        assertTrue(notes.get(0).message().contains("2.5 ms later than the tones' speed says; 2.0"));
        assertEquals("warning", notes.get(0).severity());
    }

    /** The programme with its second half at another level. */
    private static double[] endAt(double db, double gain) {
        double[] x = StraightReturn.sound();
        for (int i = 0; i < x.length; i++) {
            x[i] *= gain * (i > x.length / 2 ? Math.pow(10, db / 20) : 1);
        }
        return x;
    }

    private static ProgrammeReturn withEndMarkers(int heard, double lateMs, double[]... sound) {
        return StraightReturn.in(
                new MemoryAudio("r.wav", StraightReturn.RATE, sound), place(heard, lateMs));
    }

    private static Location place(int heard, double lateMs) {
        Location place = StraightReturn.place(0, 1, StraightReturn.SECONDS);
        List<MarkerSight> sights =
                List.of(
                        new MarkerSight(0.75, 0, 0.0001),
                        new MarkerSight(18.25, lateMs / 1000, 0.0001));
        return new Location(
                place.map(),
                place.recordingSeconds(),
                0,
                0,
                place.signs(),
                true,
                true,
                0,
                place.heardToSeconds(),
                List.of(),
                sights.subList(0, heard));
    }

    /**
     * A programme that ends 6 dB weaker than it began and comes back as it is has the same gain at
     * both ends; its samples are of one channel, the return's of two. Right after the first marker
     * it is ten times louder, which is none of the marker's.
     */
    @Test
    void aGainIsWhatReturnsOfWhatWasSent() {
        double[] sent = endAt(-6, 1);
        for (int i = StraightReturn.RATE; i < 2 * StraightReturn.RATE; i++) {
            sent[i] = 0.5 * Math.sin(i);
        }
        double[] heard = sent.clone();
        for (int i = StraightReturn.RATE; i < 2 * StraightReturn.RATE; i++) {
            heard[i] = 0;
        }
        Programme programme =
                new Programme(
                        StraightReturn.SHEET, new MemoryAudio("p", StraightReturn.RATE, sent));
        ProgrammeReturn ret =
                new ProgrammeReturn(
                        programme,
                        new MemoryAudio("r.wav", StraightReturn.RATE, heard, heard),
                        place(2, 0));
        assertEquals(List.of(), TakeCheck.notes(ret, c -> true));
    }

    @Test
    void aChangeOfLevelIsTold() {
        assertEquals(List.of(), TakeCheck.level("left", 0.5));
        assertEquals(List.of(), TakeCheck.level("left", -0.5));
        assertEquals(List.of(), TakeCheck.level("left", Double.NaN));
        assertTrue(TakeCheck.level("left", -2.1).get(0).message().contains("-2.1 dB"));
    }

    @Test
    void steadyChannelsAgree() {
        PairReading first = new PairReading(10, 1000, -20, 12.0, -0.8, 1e-3);
        PairReading last = new PairReading(90, 1000, -20, 12.2, -0.75, 1e-3);
        assertEquals(List.of(), new PairCheck(List.of(first, last), 0.1).notes());
    }

    /** 1e-3 of a ratio at 1 kHz is 1e-3/(2π·1000 Hz) = 0.16 µs: four times √2 of it, and 0.3 µs. */
    @Test
    void aShiftAndAChangeOfBalanceAreTold() {
        PairReading first = new PairReading(10, 1000, -20, 12, -0.8, 1e-3);
        PairReading last = new PairReading(90, 1000, -20, 16, -1.6, 1e-3);
        List<HealthNote> notes = new PairCheck(List.of(first, last), 0.1).notes();
        assertEquals(
                List.of("channels-shift", "balance-changes"),
                notes.stream().map(HealthNote::code).toList());
        assertTrue(notes.get(0).message().contains("+4.00 µs between 10.0 s and 90.0 s"));
    }

    /** Near half a period the phase jumps; tones of other frequency or level tell nothing here. */
    @Test
    void wholePeriodsAndOtherTonesDoNotCount() {
        PairReading first = new PairReading(10, 10_000, -20, 49.9, 0, 1e-3);
        PairReading last = new PairReading(90, 10_000, -20, -49.9, 0, 1e-3);
        PairReading loud = new PairReading(50, 10_000, 6, 49.9, -3, 1e-3);
        PairReading low = new PairReading(60, 100, -20, 80, 2, 1e-3);
        assertEquals(List.of(), new PairCheck(List.of(first, last, loud, low), 0).notes());
        assertEquals(0.2, last.laterUs(first), 1e-9);
    }
}
