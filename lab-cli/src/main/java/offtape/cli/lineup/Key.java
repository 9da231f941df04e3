package offtape.cli.lineup;

import java.util.Arrays;
import java.util.Optional;

/** What can be asked for at a key press. */
public enum Key {
    /** A tone of 1 kHz. */
    LOW('1'),
    /** A tone of 10 kHz. */
    HIGH('0'),
    /** A tone of 3150 Hz. */
    SPEED('3'),
    /** One decibel more. */
    LOUDER('+'),
    /** One decibel less. */
    SOFTER('-'),
    /** The left channel only. */
    LEFT('l'),
    /** The right channel only. */
    RIGHT('r'),
    /** Both channels. */
    BOTH('b'),
    /** Silence for a moment, in which the noise is measured. */
    NOISE('n'),
    /** A mark, by which the delay is found. */
    MARK('m'),
    /** The view of gains and balance. */
    GAINS('g'),
    /** The view of azimuth. */
    AZIMUTH('a'),
    /** The view of over-bias. */
    BIAS('o'),
    /** The view of a calibration tape's level. */
    TAPE('t'),
    /** Forgets best values and maxima. */
    ANEW('c'),
    /** Ends. */
    QUIT('q');

    private final char letter;

    Key(char letter) {
        this.letter = letter;
    }

    /** The key that is pressed for it. */
    public char letter() {
        return letter;
    }

    /** What a typed character asks for; a plus sign may also be typed without shift. */
    public static Optional<Key> of(int typed) {
        char c = typed == '=' ? '+' : Character.toLowerCase((char) typed);
        return Arrays.stream(values()).filter(k -> k.letter == c).findFirst();
    }
}
