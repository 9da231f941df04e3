package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.TooLoudException;
import offtape.core.programme.ChannelSet;
import org.junit.jupiter.api.Test;

/** What keys lead to. */
class DeskTest {

    private static final double[] TABLE = {1};

    private static Desk desk(double ceilingDbfs, boolean listening) {
        return Desk.begin(
                new Desk.Limits(-18, new LevelCeiling(ceilingDbfs), -18, listening),
                listening ? View.TAPE : View.GAINS,
                1000,
                0,
                ChannelSet.BOTH);
    }

    private static Desk press(Desk desk, Key... keys) {
        Desk next = desk;
        for (Key key : keys) {
            next = next.press(key);
        }
        return next;
    }

    @Test
    void lettersAreKeys() {
        assertEquals(Key.LOW, Key.of('1').orElseThrow());
        assertEquals(Key.LOUDER, Key.of('=').orElseThrow());
        assertEquals(Key.QUIT, Key.of('Q').orElseThrow());
        assertTrue(Key.of('?').isEmpty());
    }

    @Test
    void frequencyLevelAndChannelsAreSent() {
        Sent sent =
                press(desk(0, false), Key.HIGH, Key.LOUDER, Key.LOUDER, Key.LEFT).sent(5, TABLE);
        assertEquals(Sent.Kind.TONE, sent.kind());
        assertEquals(10_000, sent.frequencyHz());
        assertEquals(-16, 20 * Math.log10(sent.left()), 1e-9);
        assertEquals(0, sent.right());
        assertEquals(3150, press(desk(0, false), Key.SPEED).sentHz());
        assertEquals(ChannelSet.RIGHT, press(desk(0, false), Key.LEFT, Key.RIGHT).channels());
        assertEquals(-1, press(desk(0, false), Key.SOFTER).levelDb(), 1e-9);
    }

    @Test
    void theCeilingHolds() {
        Desk top = press(desk(-16.5, false), Key.LOUDER, Key.LOUDER);
        assertEquals(-16.5, top.levelDbfs(), 1e-9);
        Desk refused = top.press(Key.LOUDER);
        assertEquals(-16.5, refused.levelDbfs(), 1e-9);
        assertTrue(refused.note().contains("-16.5 dBFS"), refused.note());
        assertEquals(-17.5, refused.press(Key.SOFTER).levelDbfs(), 1e-9);
    }

    @Test
    void aToneAboveTheCeilingIsRefused() {
        assertThrows(TooLoudException.class, () -> desk(-20, false));
    }

    @Test
    void itGetsNoQuieterThanSixtyBelow() {
        Desk desk = desk(0, false);
        for (int i = 0; i < 70; i++) {
            desk = desk.press(Key.SOFTER);
        }
        assertEquals(-60, desk.levelDb(), 1e-9);
    }

    @Test
    void eachViewHasItsSound() {
        Desk azimuth = press(desk(0, false), Key.LEFT, Key.AZIMUTH);
        assertEquals(Sent.Kind.LOOP, azimuth.sent(1, TABLE).kind());
        assertEquals(-28, 20 * Math.log10(azimuth.sent(1, TABLE).right()), 1e-9);
        assertEquals(ChannelSet.BOTH, azimuth.press(Key.LEFT).channels());
        assertFalse(azimuth.press(Key.HIGH).note().isEmpty());
        Desk bias = press(azimuth, Key.BIAS);
        assertEquals(10_000, bias.sentHz());
        assertEquals(-20, bias.levelDb(), 1e-9);
        assertEquals(Sent.Kind.NOTHING, press(bias, Key.TAPE).sent(1, TABLE).kind());
        assertEquals(-20, press(bias, Key.LOUDER, Key.TAPE, Key.BIAS).levelDb(), 1e-9);
    }

    @Test
    void theLevelOfTheToneIsFoundAgain() {
        Desk back = press(desk(0, false), Key.SOFTER, Key.AZIMUTH, Key.LOUDER, Key.GAINS);
        assertEquals(-1, back.levelDb(), 1e-9);
        assertEquals(1000, back.sentHz());
    }

    @Test
    void whoListensSendsNothing() {
        Desk desk = desk(0, true);
        assertFalse(desk.sends());
        for (Key key : Key.values()) {
            assertEquals(Sent.Kind.NOTHING, desk.press(key).sent(1, TABLE).kind());
        }
        assertEquals(View.AZIMUTH, desk.press(Key.AZIMUTH).view());
        assertEquals(View.TAPE, desk.press(Key.BIAS).view());
        assertFalse(desk.press(Key.BIAS).note().isEmpty());
    }
}
