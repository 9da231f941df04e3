package offtape.cli.transfer;

import offtape.cli.capture.CaptureProgress;

/** Is told how a run goes on. */
public interface TransferListener {

    /** A stem is about to be sent. */
    void begins(Stem stem, double driveDb);

    /** A stem is done already and is not sent again. */
    void skipped(Stem stem);

    /** Playing or recording was disturbed, and the stem is sent once more. */
    void repeats(Stem stem);

    /** How far the stem that sounds has come. */
    CaptureProgress progress();

    /** A stem has come to its end. */
    void ended(TransferEntry entry);
}
