package offtape.cli.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Samples of chosen channels in the frames of a device. */
class FrameCodingTest {

    /** Two's complement, lowest byte first: 1/2 of 16 bits is 0x4000, −1/2 of 24 bits 0xC00000. */
    @Test
    void samplesAreIntegersWithTheLowestByteFirst() {
        byte[] out = new byte[8];
        new FrameCoding(16, 4, ChannelPair.parse("4,2"))
                .encode(new double[][] {{0, 0.5}, {0, -1.0 / 32_768}}, 1, 1, out);
        assertArrayEquals(new byte[] {0, 0, -1, -1, 0, 0, 0, 0x40}, out);
        byte[] three = new byte[3];
        new FrameCoding(24, 1, ChannelPair.parse("1")).encode(new double[][] {{-0.5}}, 0, 1, three);
        assertArrayEquals(new byte[] {0, 0, (byte) 0xc0}, three);
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 24, 32})
    void wholeStepsComeBackUnchanged(int bits) {
        FrameCoding coding = new FrameCoding(bits, 8, new ChannelPair(List.of(5, 6)));
        Random random = new Random(bits);
        double[][] sent = new double[2][100];
        for (double[] x : sent) {
            for (int i = 0; i < x.length; i++) {
                x[i] = Math.rint(random.nextDouble(-1, 1) * Math.scalb(1.0, bits - 1));
                x[i] = Math.scalb(x[i], 1 - bits);
            }
        }
        byte[] bytes = new byte[100 * coding.frameBytes()];
        coding.encode(sent, 0, 100, bytes);
        double[][] back = new double[2][100];
        coding.decode(bytes, 100, back, 0);
        assertArrayEquals(sent[0], back[0]);
        assertArrayEquals(sent[1], back[1]);
    }

    @Test
    void whatIsTooLoudIsLimited() {
        FrameCoding coding = new FrameCoding(16, 1, ChannelPair.parse("1"));
        byte[] bytes = new byte[4];
        coding.encode(new double[][] {{1.5, -2}}, 0, 2, bytes);
        double[][] back = new double[1][2];
        coding.decode(bytes, 2, back, 0);
        assertArrayEquals(new double[] {32_767 / 32_768.0, -1}, back[0]);
    }

    @ParameterizedTest
    @CsvSource({"'5,6', 6", "'3', 3", "' 2 , 1 ', 2"})
    void channelsAreReadFromWords(String text, int width) {
        assertEquals(width, ChannelPair.parse(text).width());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a", "0,1", "1,1", "1,2,3", "65", "1,"})
    void otherWordsAreRefusedInASentence(String text) {
        String message =
                assertThrows(IllegalArgumentException.class, () -> ChannelPair.parse(text))
                        .getMessage();
        assertEquals('.', message.charAt(message.length() - 1));
    }
}
