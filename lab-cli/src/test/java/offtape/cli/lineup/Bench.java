package offtape.cli.lineup;

import offtape.cli.sound.LevelCeiling;
import offtape.core.programme.ChannelSet;

/** A line-up without threads: what it sends returns by a made-up path, a known while later. */
final class Bench {

    static final int RATE = 48_000;
    private static final int STEP = RATE / 4;

    private final Generator generator;
    private final Lineup lineup;
    private final double[][] wire = new double[2][4 * RATE];
    private Path path = (l, r) -> new double[] {l, r};
    private int delay = 4800;
    private int played;
    private int recorded;

    /** How often the computer was late. */
    long late;

    Bench(View view, boolean listening) {
        Desk desk =
                Desk.begin(
                        new Desk.Limits(-18, LevelCeiling.FULL_SCALE, -18, listening),
                        view,
                        1000,
                        0,
                        ChannelSet.BOTH);
        generator = new Generator(RATE, LevelCeiling.FULL_SCALE);
        lineup = new Lineup(desk, generator, new Lineup.Format(RATE, 2), () -> late);
        lineup.playingBegan(0);
    }

    Bench by(Path way) {
        path = way;
        return this;
    }

    Bench after(int frames) {
        delay = frames;
        return this;
    }

    Bench press(Key key) {
        lineup.press(key);
        return this;
    }

    /** Goes on for so many seconds. */
    Readings run(double seconds) {
        for (int s = 0; s < seconds * 4; s++) {
            double[][] sent = new double[2][STEP];
            generator.fill(sent, STEP);
            double[][] back = new double[2][STEP];
            for (int i = 0; i < STEP; i++) {
                wire[0][played % wire[0].length] = sent[0][i];
                wire[1][played % wire[0].length] = sent[1][i];
                played++;
                int from = recorded - delay;
                double[] frame =
                        path.of(
                                from < 0 ? 0 : wire[0][from % wire[0].length],
                                from < 0 ? 0 : wire[1][from % wire[0].length]);
                back[0][i] = frame[0];
                back[1][i] = frame[1];
                recorded++;
            }
            lineup.accept(back, STEP);
        }
        return lineup.readings();
    }

    /** Goes on until there are readings of what is sent. */
    Readings settle() {
        run(0.25);
        for (int i = 0; i < 80 && lineup.readings().stage() != Stage.READING; i++) {
            run(0.25);
        }
        return lineup.readings();
    }
}
