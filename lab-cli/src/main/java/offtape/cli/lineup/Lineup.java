package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import offtape.core.unit.Decibels;

/**
 * Takes what returns, block by block, and keeps the readings; takes keys and says what is to be
 * sent. Begins with the noise and a mark. Time is counted in recorded frames. One thread uses it.
 */
public final class Lineup {

    private static final double KEPT_S = 8;

    private final int sampleRateHz;
    private final Flow flow;
    private final History history;
    private final List<PeakWatch> peaks = new ArrayList<>();
    private final Meters meters;
    private final LongSupplier late;
    private Desk desk;
    private Stage stage;
    private boolean started;
    private NoiseTake noiseTake;
    private MarkTake markTake;
    private List<NoiseReading> noise = List.of();
    private Delay delay = Delay.none();
    private long lateAtMark;

    /**
     * Makes ready.
     *
     * @param desk what is set at the beginning
     * @param sound makes what is sent
     * @param format of what is recorded
     * @param late how often the computer was late so far
     */
    Lineup(Desk desk, Generator sound, Format format, LongSupplier late) {
        this.desk = desk;
        this.sampleRateHz = format.sampleRateHz();
        this.flow = new Flow(sound, sampleRateHz);
        this.history = new History(format.channels(), (int) (KEPT_S * sampleRateHz));
        for (int c = 0; c < format.channels(); c++) {
            peaks.add(new PeakWatch(c, sampleRateHz));
        }
        this.meters = new Meters(sampleRateHz);
        this.late = late;
        if (desk.sends()) {
            beSilent();
        } else {
            send();
        }
    }

    /**
     * What is recorded.
     *
     * @param sampleRateHz frames a second
     * @param channels one or two
     */
    record Format(int sampleRateHz, int channels) {}

    /** Playing began when so many frames had been recorded. */
    void playingBegan(long recordedFrames) {
        flow.playingBegan(recordedFrames);
    }

    /** Takes what was recorded next. */
    public void accept(double[][] block, int count) {
        history.append(block, count);
        peaks.forEach(p -> p.look(block, count));
        switch (stage) {
            case NOISE -> {
                if (noiseTake.isDone(history, sampleRateHz)) {
                    boolean first = noise.isEmpty();
                    noise = noiseTake.result();
                    if (first) {
                        sendMark();
                    } else {
                        send();
                    }
                }
            }
            case MARK -> {
                if (markTake.isDone(history, sampleRateHz)) {
                    timed();
                    send();
                }
            }
            default -> read();
        }
    }

    private void read() {
        boolean heard =
                desk.limits().listening()
                        ? history.frames() >= meters.seconds(desk) * sampleRateHz
                        : flow.isHeard(history.frames(), meters.seconds(desk));
        stage = heard ? Stage.READING : Stage.SETTLING;
        if (heard) {
            meters.read(desk, history);
            started = true;
        }
    }

    private void timed() {
        markTake.lagFrames()
                .ifPresentOrElse(
                        lag -> {
                            flow.timed(lag);
                            // nothing returns before it is sent, but for rounding
                            double frames = Math.max(0, lag - flow.beganAfter());
                            double ms = 1000 * frames / sampleRateHz;
                            delay = delay.found(ms, late.getAsLong() > lateAtMark);
                            lateAtMark = late.getAsLong();
                        },
                        () -> delay = delay.missing());
    }

    /** Does what a key asks for. */
    public void press(Key key) {
        Desk before = desk;
        desk = desk.press(key);
        if (key == Key.ANEW || before.view() != desk.view()) {
            meters.clear();
        }
        boolean busy = stage == Stage.NOISE || stage == Stage.MARK;
        if (desk.sends() && key == Key.NOISE) {
            beSilent();
        } else if (desk.sends() && key == Key.MARK) {
            sendMark();
        } else if (changed(before) && !(busy && desk.sends())) {
            send();
        }
    }

    private boolean changed(Desk before) {
        return before.view() != desk.view()
                || before.levelDb() != desk.levelDb()
                || before.sentHz() != desk.sentHz()
                || before.channels() != desk.channels();
    }

    private void send() {
        flow.send(desk);
        meters.blank();
        stage = Stage.SETTLING;
    }

    private void beSilent() {
        flow.sendNothing();
        noiseTake = new NoiseTake(flow);
        stage = Stage.NOISE;
    }

    private void sendMark() {
        double levelDb = Math.min(Mark.LEVEL_DB, desk.levelDb());
        flow.sendMark(Decibels.toAmplitude(desk.limits().referenceDbfs() + levelDb));
        markTake = new MarkTake(flow);
        stage = Stage.MARK;
    }

    /** Fades out. */
    void fadeOut() {
        flow.sendNothing();
    }

    /** Whether all has faded out. */
    boolean hasFadedOut() {
        return flow.isSettled();
    }

    /** How everything stands. */
    public Readings readings() {
        return meters.readings(
                stage,
                started,
                desk,
                noise,
                delay,
                peaks.stream().map(PeakWatch::peak).toList(),
                late.getAsLong());
    }
}
