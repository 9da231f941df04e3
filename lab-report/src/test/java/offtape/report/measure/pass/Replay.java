package offtape.report.measure.pass;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/**
 * Replays of one tape of our own invention, written down as formulas. The tape holds a tone from 1
 * s of the programme on. Where it was written faster, less of the programme lies on a length of it:
 * s(x) = x − W(x), W the sum of w/(2πh)·sin(2πhx + φ), so the written deviation is about w·cos(2πhx
 * + φ). A replay that starts at t₀ and runs at v comes by x(t) = u + R(u), u = v·(t − t₀): its
 * parts are geared to the tape too.
 */
final class Replay {

    static final int RATE = 8000;

    static final double FROM_S = 1;

    private record Line(double percent, double hz, double phase) {

        /** Sum of its deviation up to a time. */
        double sum(double t) {
            return percent / 100 / (2 * Math.PI * hz) * Math.sin(2 * Math.PI * hz * t + phase);
        }

        double percent(double t) {
            return percent * Math.cos(2 * Math.PI * hz * t + phase);
        }
    }

    private final double toneHz;
    private final double seconds;
    private final List<Line> written;
    private final List<Line> read = new ArrayList<>();
    private double startS;
    private double speed = 1;
    private double mapErrorS;
    private double silenceS;
    private boolean isWithoutSilence;

    private Replay(double toneHz, double seconds, List<Line> written) {
        this.toneHz = toneHz;
        this.seconds = seconds;
        this.written = written;
    }

    /** A tape with a tone of so many seconds. */
    static Replay tape(double toneHz, double seconds) {
        return new Replay(toneHz, seconds, new ArrayList<>());
    }

    /** Adds to what the tape holds. */
    Replay written(double percent, double hz, double phase) {
        written.add(new Line(percent, hz, phase));
        return this;
    }

    /** The same tape once more, from another moment on and at another speed. */
    Replay again(double otherStartS, double otherSpeed) {
        Replay other = new Replay(toneHz, seconds, written);
        other.startS = otherStartS;
        other.speed = otherSpeed;
        return other;
    }

    /** Adds to what the replay does. */
    Replay read(double percent, double hz, double phase) {
        read.add(new Line(percent, hz, phase));
        return this;
    }

    /** The return is told to lie so much later than it does. */
    Replay misplaced(double bySeconds) {
        mapErrorS = bySeconds;
        return this;
    }

    /** So much is missing of the tone's end. */
    Replay shortened(double bySeconds) {
        silenceS = bySeconds;
        return this;
    }

    /** The tone begins long before its cue and never ends. */
    Replay withoutSilence() {
        isWithoutSilence = true;
        return this;
    }

    /** Place of the tape at a time of the recording, seconds. */
    private double x(double t) {
        double u = speed * (t - startS);
        double x = u;
        for (Line l : read) {
            x += l.sum(u);
        }
        return x;
    }

    /** Moment of the programme that is heard at a time of the recording. */
    double programmeSeconds(double t) {
        double x = x(t);
        double s = x;
        for (Line l : written) {
            s -= l.sum(x);
        }
        return s;
    }

    /** What is heard at a time of the recording: percent of read over written, less one. */
    double heardPercent(double t) {
        double r = 1;
        for (Line l : read) {
            r += l.percent(speed * (t - startS)) / 100;
        }
        double w = 1;
        for (Line l : written) {
            w -= l.percent(x(t)) / 100;
        }
        return 100 * (speed * r * w - 1);
    }

    private double sound(double t) {
        double s = programmeSeconds(t);
        boolean isIn = s >= FROM_S && s < FROM_S + seconds - silenceS;
        return isIn || isWithoutSilence ? 0.2 * Math.sin(2 * Math.PI * toneHz * s) : 0;
    }

    /** The return. */
    ProgrammeReturn play() {
        double length = (seconds + 2) / speed + startS;
        double[] x = new double[(int) (length * RATE)];
        for (int i = 0; i < x.length; i++) {
            x[i] = sound((double) i / RATE);
        }
        Cue.Tone tone =
                new Cue.Tone(
                        "speed",
                        ChannelSet.BOTH,
                        (long) (FROM_S * RATE),
                        (long) (seconds * RATE),
                        toneHz,
                        0);
        CueSheet sheet =
                new CueSheet(RATE, (long) ((seconds + 2) * RATE), -18, null, List.of(tone));
        MemoryAudio recording = new MemoryAudio("replay.wav", RATE, x);
        Location there =
                new Location(
                        TimeMap.straight(startS + mapErrorS, 1 / speed, seconds + 2),
                        length,
                        startS,
                        0,
                        List.of(1),
                        true,
                        true,
                        0,
                        length,
                        List.of());
        return new ProgrammeReturn(new Programme(sheet, recording), recording, there);
    }
}
