package offtape.core.audio.flac;

/** A running cyclic redundancy check, most significant bit first, from zero, of 8 or 16 bits. */
final class Crc {

    private final int width;
    private final int[] table = new int[256];
    private int value;

    /**
     * Makes the table.
     *
     * @param width 8 or 16
     * @param polynomial without its leading term
     */
    Crc(int width, int polynomial) {
        this.width = width;
        for (int i = 0; i < table.length; i++) {
            int rest = i << width - 8;
            for (int bit = 0; bit < 8; bit++) {
                boolean high = (rest >> width - 1 & 1) != 0;
                rest = (rest << 1 ^ (high ? polynomial : 0)) & mask();
            }
            table[i] = rest;
        }
    }

    private int mask() {
        return (1 << width) - 1;
    }

    void reset() {
        value = 0;
    }

    /** Takes one byte, 0 to 255. */
    void add(int octet) {
        int index = (value >> width - 8 ^ octet) & 0xFF;
        value = (value << 8 ^ table[index]) & mask();
    }

    int value() {
        return value;
    }
}
