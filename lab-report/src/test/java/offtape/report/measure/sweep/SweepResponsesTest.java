package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.OptionalDouble;
import offtape.core.dsp.PowerDensity;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;

class SweepResponsesTest {

    private static WrittenSweep written(double left, double right) {
        return WrittenSweep.of(
                40,
                3000,
                3,
                (phase, hz) -> left * (Math.sin(phase) + 0.03 * Math.sin(3 * phase)),
                (phase, hz) -> right * (Math.sin(phase) + 0.01 * Math.sin(3 * phase)));
    }

    private static FollowedSweep follow(WrittenSweep written, ProgrammeReturn ret) {
        return new SweepFollower(written.cue(), WrittenSweep.RATE).follow(ret);
    }

    private static double atOneKilohertz(Response r, int order) {
        return r.harmonics().stream()
                .filter(h -> h.order() == order)
                .flatMap(h -> h.points().stream())
                .filter(p -> Math.abs(p.frequencyHz() - 1000) < 1)
                .mapToDouble(HarmonicCurve.Point::percent)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void eachChannelHasItsResponseAndItsHarmonics() {
        WrittenSweep written = written(0.5, 0.25);
        ProgrammeReturn ret = written.ret();
        List<Response> found =
                SweepResponses.of(
                        ret,
                        List.of(follow(written, ret)),
                        HarmonicFollower.follow(ret, written.cue()),
                        null,
                        Leakage.NONE,
                        0);
        assertEquals(List.of("left", "right"), found.stream().map(Response::channel).toList());
        assertEquals(3, atOneKilohertz(found.get(0), 3), 0.03);
        assertEquals(1, atOneKilohertz(found.get(1), 3), 0.01);
        assertEquals(-6, found.get(0).levelDb());
        assertNull(found.get(0).levelDependence());
    }

    /** A channel that is silent has none; noise enters by its own channel's density. */
    @Test
    void whatIsNotHeardHasNoResponse() {
        WrittenSweep written = written(0, 0.25);
        ProgrammeReturn ret = written.ret();
        PowerDensity none = Densities.white(0, WrittenSweep.RATE);
        PowerDensity loud = Densities.white(1, WrittenSweep.RATE);
        for (boolean noisyLeft : new boolean[] {true, false}) {
            PowerDensity[] noise = noisyLeft ? arrayOf(loud, none) : arrayOf(none, loud);
            List<Response> found =
                    SweepResponses.of(
                            ret, List.of(follow(written, ret)), null, noise, Leakage.NONE, 0);
            List<String> heard = noisyLeft ? List.of("right") : List.of();
            assertEquals(heard, found.stream().map(Response::channel).toList());
            found.forEach(r -> assertEquals(List.of(), r.harmonics()));
        }
    }

    private static PowerDensity[] arrayOf(PowerDensity left, PowerDensity right) {
        return new PowerDensity[] {left, right};
    }

    /** Harmonics belong to the sweep they were read from. */
    @Test
    void harmonicsOfAnotherSweepAreNotItsOwn() {
        WrittenSweep written = written(0.5, 0.25);
        ProgrammeReturn ret = written.ret();
        WrittenSweep other = WrittenSweep.of(50, 3000, 3, WrittenSweep.gain(1));
        List<Response> found =
                SweepResponses.of(
                        ret,
                        List.of(follow(written, ret)),
                        HarmonicFollower.follow(other.ret(), other.cue()),
                        null,
                        Leakage.NONE,
                        0);
        assertEquals(2, found.size());
        found.forEach(r -> assertEquals(List.of(), r.harmonics()));
    }

    private static final double[] HZ = {250, 500, 1000, 2000, 4000};

    private static Response heard(String channel, double levelDb, double... db) {
        double[] hz = java.util.Arrays.copyOf(HZ, db.length);
        return ResponseMeasure.response(
                        channel,
                        levelDb,
                        new ResponseCurve(hz, db, new double[db.length]),
                        OptionalDouble.empty())
                .withHarmonics(
                        List.of(
                                new HarmonicCurve(
                                        3,
                                        List.of(new HarmonicCurve.Point(1000, 0.4, 0.03, 0.01)))))
                .withPhase(new double[db.length]);
    }

    /**
     * The interface loses 3 dB an octave above 1 kHz, so of 2 dB at 2 kHz −2 + 3 = 1 dB are left,
     * of −4 dB at 4 kHz 2 dB. Its own third harmonic of 0.04 % makes 0.03 % uncertain by 0.05 %.
     * What phase there was is no longer told.
     */
    @Test
    void anInterfaceIsTakenOutOfResponses() {
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel(
                                "left",
                                Interfaces.curve(
                                        new double[] {1, 1000, 64_000},
                                        new double[] {0, 0, -18},
                                        new double[] {0, 0, 0}),
                                new HarmonicCurve(
                                        3,
                                        List.of(
                                                new HarmonicCurve.Point(
                                                        1000, 0.04, 0.01, 0.001)))));
        Response left = heard("left", -20, 0, 0, 0, -2, -4);
        Response right = heard("right", -20, 0, 0, 0, -2, -4);
        List<Response> found =
                SweepResponses.without(known, WrittenSweep.plain().ret(), List.of(left, right));
        assertEquals(2, found.size());
        assertArrayEquals(new double[] {0, 0, 0, 1, 2}, found.get(0).magnitudeDb(), 1e-9);
        HarmonicCurve.Point p = found.get(0).harmonics().get(0).points().get(0);
        assertEquals(0.4, p.percent());
        assertEquals(0.05, p.uncertaintyPercent(), 1e-12);
        assertNull(found.get(0).phaseDegrees());
        // the loopback does not know of a right channel
        assertArrayEquals(right.magnitudeDb(), found.get(1).magnitudeDb());
        assertEquals(0.03, found.get(1).harmonics().get(0).points().get(0).uncertaintyPercent());
    }

    /** A tape that runs at twice the speed brings 1 kHz of the programme back at 2 kHz. */
    @Test
    void theInterfaceIsReadWhereTheRecordingHasIt() {
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel(
                                "left",
                                Interfaces.curve(
                                        new double[] {1000, 16_000},
                                        new double[] {0, -12},
                                        new double[] {0, 0})));
        List<Response> found =
                SweepResponses.without(
                        known,
                        WrittenSweep.plain().atSpeed(2).ret(),
                        List.of(heard("left", -20, 0, 0, 0, 0, 0)));
        assertArrayEquals(new double[] {500, 1000, 2000, 4000}, found.get(0).frequencyHz());
        assertArrayEquals(new double[] {0, 3, 6, 9}, found.get(0).magnitudeDb(), 1e-9);
    }

    /** Nothing gets through the interface, or nothing was told before: the response stays. */
    @Test
    void whereNothingIsLeftTheResponseStays() {
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel(
                                "left",
                                Interfaces.curve(
                                        new double[] {5000, 6000},
                                        new double[] {0, 0},
                                        new double[] {0, 0})));
        Response whole = heard("left", -20, 0, 0, 0, -2, -4);
        Response empty = emptied(whole);
        List<Response> found =
                SweepResponses.without(known, WrittenSweep.plain().ret(), List.of(whole, empty));
        assertSame(whole, found.get(0));
        assertSame(empty, found.get(1));
    }

    /** As of a dead channel: no points, and why. */
    private static Response emptied(Response r) {
        double[] none = {};
        Quantity unknown = Quantity.unknown("The channel is dead.");
        return new Response(
                r.channel(),
                r.levelDb(),
                none,
                none,
                none,
                unknown,
                unknown,
                unknown,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    /** The louder one is held against the quieter one once the interface is out of both. */
    @Test
    void levelsAreComparedAnew() {
        KnownInterface known =
                Interfaces.of(
                        Interfaces.channel(
                                "left",
                                Interfaces.curve(
                                        new double[] {600, 1500},
                                        new double[] {0, 0},
                                        new double[] {0, 0})));
        List<Response> found =
                SweepResponses.without(
                        known,
                        WrittenSweep.plain().ret(),
                        List.of(heard("left", 0, 1, 1, 0, 1, 1), heard("left", -20, 0, 0, 0, 0)));
        assertArrayEquals(new double[] {1000}, found.get(0).levelDependence().frequencyHz());
        assertEquals(-20, found.get(0).levelDependence().quietLevelDb());
        assertFalse(found.get(0).levelDependence().oneDbLossFrom().isKnown());
        assertNull(found.get(1).levelDependence());
    }
}
