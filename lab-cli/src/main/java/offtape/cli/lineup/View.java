package offtape.cli.lineup;

/** What is looked at, and with it what is sent. */
public enum View {
    /** Gains, balance, distortion, noise and delay, with a steady tone. */
    GAINS(0),
    /** Delay between the channels, with many tones at once, their peak below the reference tone. */
    AZIMUTH(-10),
    /** The return of a quiet high tone while the bias is turned. */
    BIAS(-20),
    /** The level of a calibration tape's tone; nothing is sent. */
    TAPE(0);

    private final double levelDb;

    View(double levelDb) {
        this.levelDb = levelDb;
    }

    /** Peak at which sending begins, dB re the peak of the reference tone. */
    double levelDb() {
        return levelDb;
    }
}
