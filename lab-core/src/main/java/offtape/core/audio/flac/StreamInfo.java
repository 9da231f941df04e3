package offtape.core.audio.flac;

import java.util.Arrays;
import java.util.Locale;
import offtape.core.text.Sentences;

/**
 * What the stream says of itself at its beginning (RFC 9639, section 8.2).
 *
 * @param sampleRateHz 0 to 1048575
 * @param channels 1 to 8
 * @param bits size of a sample, 1 to 32; the format allows 4 and more
 * @param frames number of samples a channel, 0 if it was not known
 * @param md5 checksum of the unencoded sound in hexadecimal digits, empty if there is none
 */
public record StreamInfo(int sampleRateHz, int channels, int bits, long frames, String md5) {

    private static final Sentences SAID = Sentences.near(StreamInfo.class);

    private static final int LENGTH = 34;

    /** Reads the block's content and what its head says is there beyond it. */
    static StreamInfo read(BitReader in, long length) throws FlacFault {
        if (length < LENGTH) {
            throw FlacFault.damaged(SAID.say("description.too-short"));
        }
        // least and largest size of blocks and frames; each frame says it again
        in.skip(10);
        int rate = (int) in.unsigned(20);
        int channels = (int) in.unsigned(3) + 1;
        int bits = (int) in.unsigned(5) + 1;
        long frames = in.unsigned(36);
        String md5 = md5(in);
        in.skip(length - LENGTH);
        return new StreamInfo(rate, channels, bits, frames, md5);
    }

    private static String md5(BitReader in) throws FlacFault {
        long[] parts = new long[4];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = in.unsigned(32);
        }
        if (Arrays.stream(parts).allMatch(p -> p == 0)) {
            return "";
        }
        StringBuilder digits = new StringBuilder();
        for (long part : parts) {
            digits.append(String.format(Locale.ROOT, "%08x", part));
        }
        return digits.toString();
    }
}
