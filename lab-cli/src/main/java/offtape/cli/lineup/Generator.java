package offtape.cli.lineup;

import offtape.cli.sound.LevelCeiling;

/**
 * Makes what is sent, block by block. Asked by one thread and filled by another; filling neither
 * locks nor allocates. The first tone rises from 40 dB below over some seconds, and every change
 * fades.
 */
final class Generator {

    /** How long the rise at the start takes. */
    static final double RISE_S = 3;

    private static final double RISE_DB = 40;
    private static final double FADE_S = 0.03;

    private final int sampleRateHz;
    private final double highest;
    private final Ramp left;
    private final Ramp right;
    private final double growth;
    private double rise = Math.pow(10, -RISE_DB / 20);
    private Sent current = Sent.nothing(0);
    private double phase;
    private int place;
    private volatile Sent wanted = current;
    private volatile long frames;
    private volatile long settledFrame;
    private volatile long settledNumber;
    private volatile long beganFrame;

    Generator(int sampleRateHz, LevelCeiling ceiling) {
        this.sampleRateHz = sampleRateHz;
        this.highest = ceiling.peak();
        this.left = new Ramp((int) Math.ceil(FADE_S * sampleRateHz));
        this.right = new Ramp((int) Math.ceil(FADE_S * sampleRateHz));
        this.growth = Math.pow(10, RISE_DB / 20 / (RISE_S * sampleRateHz));
    }

    /** Sends something else from now on. */
    void send(Sent sent) {
        wanted = sent;
    }

    /**
     * The frame, counted from the first that was played, from which on something is sent as asked
     * for; −1 if it is not yet.
     */
    long settledAt(Sent sent) {
        return settledNumber == sent.number() ? settledFrame : -1;
    }

    /** The frame at which what is settled began to sound. */
    long beganAt() {
        return beganFrame;
    }

    /** Frames made so far. */
    long frames() {
        return frames;
    }

    /** Makes the next frames: one channel for both sides, or two. */
    void fill(double[][] block, int count) {
        long at = frames;
        for (int i = 0; i < count; i++) {
            if (current != wanted) {
                turn(wanted, at + i);
            }
            double value = value() * risen();
            double l = value * left.next();
            double r = value * right.next();
            if (block.length == 1) {
                block[0][i] = Math.abs(l) > Math.abs(r) ? l : r;
            } else {
                block[0][i] = l;
                block[1][i] = r;
            }
            if (settledNumber != current.number() && isSettled()) {
                settledFrame = at + i + 1;
                settledNumber = current.number();
            }
        }
        frames = at + count;
    }

    private void turn(Sent next, long frame) {
        if (!next.sounds(current)) {
            left.moveTo(0);
            right.moveTo(0);
            if (!left.isSilent() || !right.isSilent()) {
                return;
            }
            phase = 0;
            place = 0;
            beganFrame = frame;
        }
        current = next;
        double l = Math.min(next.left(), highest);
        double r = Math.min(next.right(), highest);
        if (next.kind() == Sent.Kind.ONCE) {
            left.setTo(l);
            right.setTo(r);
        } else {
            left.moveTo(l);
            right.moveTo(r);
        }
    }

    private double value() {
        switch (current.kind()) {
            case TONE:
                phase += current.frequencyHz() / sampleRateHz;
                phase -= Math.floor(phase);
                return Math.sin(2 * Math.PI * phase);
            case LOOP:
                place = place + 1 < current.table().length ? place + 1 : 0;
                return current.table()[place];
            case ONCE:
                if (place < current.table().length) {
                    return current.table()[place++];
                }
                left.setTo(0);
                right.setTo(0);
                return 0;
            default:
                return 0;
        }
    }

    private double risen() {
        if (rise < 1 && (current.kind() == Sent.Kind.TONE || current.kind() == Sent.Kind.LOOP)) {
            rise = Math.min(1, rise * growth);
        }
        return current.kind() == Sent.Kind.ONCE ? 1 : rise;
    }

    private boolean isSettled() {
        return switch (current.kind()) {
            case ONCE -> place >= current.table().length;
            case NOTHING -> left.isDone() && right.isDone();
            default -> rise >= 1 && left.isDone() && right.isDone();
        };
    }
}
