package offtape.core.audio.flac;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Subframes that are noise, behind heads whose checksums hold, as in a file made to do harm. */
class DamagedStreamTest {

    private static final int TRIALS = 20_000;

    @Test
    void noiseIsDecodedOrRefused() {
        Random random = new Random(20260203);
        int refused = 0;
        for (int i = 0; i < TRIALS; i++) {
            byte[] noise = new byte[1 + random.nextInt(60)];
            random.nextBytes(noise);
            // the first bit of a subframe is 0, so that its kind is one of all
            noise[0] &= 0x7F;
            long[] out = new long[64];
            try {
                Subframe.read(new BitReader(supply(noise)), out, 1 + random.nextInt(64), 16);
            } catch (FlacFault e) {
                refused++;
                assertTrue(e.isCutShort() || !e.getMessage().isBlank());
            }
        }
        int count = refused;
        assertTrue(count > 0 && count < TRIALS, () -> count + " refused");
    }

    private static ByteSupply supply(byte[] bytes) {
        int[] given = {0};
        return into -> {
            if (given[0]++ > 0) {
                return -1;
            }
            System.arraycopy(bytes, 0, into, 0, bytes.length);
            return bytes.length;
        };
    }

    /**
     * The catalogue of cyclic redundancy checks gives F4 for this one of 8 bits (SMBus) and FEE8
     * for that of 16 (Umts), each over the digits 1 to 9.
     */
    @Test
    void checksums() {
        Crc eight = new Crc(8, 0x07);
        Crc sixteen = new Crc(16, 0x8005);
        for (byte octet : HexFormat.of().parseHex("313233343536373839")) {
            eight.add(octet);
            sixteen.add(octet);
        }
        assertEquals(0xF4, eight.value());
        assertEquals(0xFEE8, sixteen.value());
    }
}
