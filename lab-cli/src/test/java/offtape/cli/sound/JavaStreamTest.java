package offtape.cli.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import org.junit.jupiter.api.Test;

/** A stream over lines as the JDK's were seen to behave, without a device. */
class JavaStreamTest {

    private static final int RATE = 48_000;

    /** 20 ms, what is handed to a line at once. */
    private static final int CHUNK = 960;

    /** Two channels of 16 bits. */
    private static final int FRAME_BYTES = 4;

    private static final int BUFFER_BYTES = 3 * CHUNK * FRAME_BYTES;

    private static final AudioFormat FORMAT = JavaDirection.format(RATE, 16, 2);

    private final MadeUpLine out = MadeUpLine.open(SourceDataLine.class, FORMAT, BUFFER_BYTES);
    private final MadeUpLine in = MadeUpLine.open(TargetDataLine.class, FORMAT, BUFFER_BYTES);
    private final JavaStream stream = new JavaStream(RATE, 16, playback(), recording());

    private JavaPlayback playback() {
        return new JavaPlayback(new JavaEnd<>(out.source(), coding(), "The output \"Desk\""));
    }

    private JavaRecording recording() {
        return new JavaRecording(new JavaEnd<>(in.target(), coding(), "The input \"Desk\""));
    }

    private static FrameCoding coding() {
        return new FrameCoding(16, 2, ChannelPair.FIRST);
    }

    private void play(int chunks) {
        stream.play(new double[2][chunks * CHUNK], chunks * CHUNK);
    }

    private void record(int readyBytes) {
        in.ready = readyBytes;
        in.heard = new byte[in.heard.length + CHUNK * FRAME_BYTES];
        assertEquals(CHUNK, stream.record(new double[2][CHUNK], CHUNK));
    }

    /** 1/4 of 16 bits is 0x2000, −1/4 0xe000, lowest byte first. */
    @Test
    void whatIsPlayedArrivesWholeHoweverLittleIsTakenAtOnce() {
        out.most = 25 * FRAME_BYTES;
        double[][] block = {new double[2500], new double[2500]};
        block[0][2499] = 0.25;
        block[1][0] = -0.25;
        stream.play(block, 2500);
        byte[] played = out.played.toByteArray();
        assertEquals(2500 * FRAME_BYTES, played.length);
        assertEquals((byte) 0xe0, played[3]);
        assertEquals((byte) 0x20, played[2499 * FRAME_BYTES + 1]);
    }

    @Test
    void whatIsRecordedComesIntoItsPlace() {
        in.heard = new byte[1000 * FRAME_BYTES];
        in.heard[999 * FRAME_BYTES + 3] = (byte) 0xc0;
        double[][] block = new double[2][1000];
        assertEquals(1000, stream.record(block, 1000));
        assertEquals(-0.5, block[1][999]);
        assertEquals(0, block[0][999]);
    }

    /** It is no exception: a lost device takes nothing and gives nothing, for ever. */
    @Test
    void aLostDeviceIsTold() {
        out.lost = true;
        in.lost = true;
        assertEquals(
                "The output \"Desk\" takes no more sound: it was unplugged or switched off, or its"
                        + " sound server ended. Connect it again and start anew.",
                assertThrows(SoundTroubleException.class, () -> play(1)).getMessage());
        assertEquals(
                "The input \"Desk\" gives no more sound: it was unplugged or switched off, or its"
                        + " sound server ended. Connect it again and start anew.",
                assertThrows(
                                SoundTroubleException.class,
                                () -> stream.record(new double[2][CHUNK], CHUNK))
                        .getMessage());
    }

    @Test
    void anInputThatEndsAmidAFrameIsLost() {
        in.heard = new byte[10 * FRAME_BYTES + 1];
        double[][] block = new double[2][CHUNK];
        assertThrows(SoundTroubleException.class, () -> stream.record(block, CHUNK));
    }

    @Test
    void aStopIsNoLoss() {
        in.heard = new byte[10 * FRAME_BYTES + 3];
        in.meanwhile = stream::stop;
        assertEquals(10, stream.record(new double[2][CHUNK], CHUNK));
        assertEquals(0, stream.record(new double[2][CHUNK], CHUNK));
        play(1);
        assertEquals(0, out.played.size());
        stream.drain();
        assertFalse(out.drained);
        assertTrue(out.flushed && in.flushed);
    }

    @Test
    void aStopWhilePlayingIsNoLoss() {
        out.most = 0;
        out.meanwhile = stream::stop;
        play(1);
        assertFalse(out.started);
    }

    /** A buffer of three chunks is full after three, and from then on it can run dry. */
    @Test
    void eachUnderrunIsMarkedOnce() {
        play(1);
        out.runDry();
        play(1);
        assertEquals(0, stream.underruns(), "it was not full yet");
        play(9);
        assertEquals(0, stream.underruns());
        out.runDry();
        play(1);
        assertEquals(1, stream.underruns());
        play(9);
        assertEquals(1, stream.underruns());
        out.runDry();
        play(1);
        assertEquals(2, stream.underruns());
    }

    @Test
    void aFullInputIsMarkedOnceUntilItWasEmptied() {
        record(BUFFER_BYTES / 3);
        assertEquals(0, stream.overruns());
        record(BUFFER_BYTES - FRAME_BYTES);
        record(BUFFER_BYTES);
        assertEquals(1, stream.overruns());
        record(2 * BUFFER_BYTES / 3);
        record(BUFFER_BYTES);
        assertEquals(1, stream.overruns());
        record(0);
        record(BUFFER_BYTES);
        assertEquals(2, stream.overruns());
    }

    @Test
    void bothLinesStartAndEnd() {
        assertEquals(RATE, stream.sampleRateHz());
        assertEquals(16, stream.bits());
        assertArrayEquals(new int[] {2, 2}, new int[] {stream.outputs(), stream.inputs()});
        stream.startRecording();
        assertTrue(in.started);
        assertFalse(out.started);
        stream.startPlaying();
        assertTrue(out.started);
        stream.drain();
        assertTrue(out.drained);
        stream.close();
        assertFalse(out.isOpen() || in.isOpen());
    }

    @Test
    void oneDirectionMayBeMissing() {
        JavaStream plays = new JavaStream(RATE, 16, playback(), null);
        JavaStream records = new JavaStream(RATE, 16, null, recording());
        assertArrayEquals(new int[] {2, 0}, new int[] {plays.outputs(), plays.inputs()});
        assertArrayEquals(new int[] {0, 2}, new int[] {records.outputs(), records.inputs()});
        assertEquals(0, plays.overruns());
        assertEquals(0, records.underruns());
        plays.stop();
        records.stop();
        plays.close();
        assertFalse(out.isOpen());
        assertTrue(in.isOpen());
        records.close();
        assertFalse(in.isOpen());
    }
}
