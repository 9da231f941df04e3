package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A {@link BroadcastNote} as the bytes of a chunk {@code bext} (EBU Tech 3285, version 1): the
 * description of 256 bytes, originator and its reference of 32 each, date of 10, time of 8, the
 * first frame in 8, the version in 2, an identifier of 64 that is not used, 190 in reserve, and
 * then the history.
 */
final class BroadcastChunk {

    static final String ID = "bext";

    private static final String ORIGINATOR = "Offtape";
    private static final int NAME = 32;
    private static final int VERSION = 1;
    private static final int AFTER_VERSION = 64 + 190;

    /** Everything but the history. */
    private static final int FIXED =
            BroadcastNote.DESCRIPTION
                    + 2 * NAME
                    + BroadcastNote.DATE
                    + BroadcastNote.TIME
                    + Long.BYTES
                    + Short.BYTES
                    + AFTER_VERSION;

    /** No more of a history is read. */
    private static final int LONGEST_HISTORY = 1 << 14;

    private BroadcastChunk() {}

    /** The chunk's content, of an even length. */
    static byte[] bytes(BroadcastNote note, WavFormat format) {
        byte[] history = history(note, format).getBytes(StandardCharsets.US_ASCII);
        ByteBuffer out =
                ByteBuffer.allocate(FIXED + history.length + (history.length & 1))
                        .order(ByteOrder.LITTLE_ENDIAN);
        put(out, note.description(), BroadcastNote.DESCRIPTION);
        put(out, ORIGINATOR, NAME);
        put(out, "", NAME);
        put(out, note.date(), BroadcastNote.DATE);
        put(out, note.time(), BroadcastNote.TIME);
        out.putLong(note.firstFrame());
        out.putShort((short) VERSION);
        out.position(FIXED);
        return out.put(history).array();
    }

    private static void put(ByteBuffer out, String text, int length) {
        out.put(Arrays.copyOf(text.getBytes(StandardCharsets.US_ASCII), length));
    }

    private static String history(BroadcastNote note, WavFormat format) {
        StringBuilder lines = new StringBuilder();
        note.history().forEach(line -> lines.append(line).append("\r\n"));
        return lines.append(own(format)).append("\r\n").toString();
    }

    private static String own(WavFormat format) {
        String rate = "F=" + format.sampleRateHz();
        String bits = "W=" + format.encoding().bits();
        String maker = "T=" + ORIGINATOR + (format.encoding().isFloating() ? "; float" : "");
        return switch (format.channels()) {
            case 1 -> BroadcastNote.line("A=PCM", rate, bits, "M=mono", maker);
            case 2 -> BroadcastNote.line("A=PCM", rate, bits, "M=stereo", maker);
            default -> BroadcastNote.line("A=PCM", rate, bits, maker);
        };
    }

    /**
     * Reads one; what it says decides nothing about the sound, so that one that is cut or senseless
     * is none.
     */
    static Optional<BroadcastNote> read(FileBytes file, Chunk chunk) {
        if (chunk.size() < FIXED || chunk.body() + FIXED > file.size()) {
            return Optional.empty();
        }
        ByteBuffer in =
                file.peek(chunk.body(), (int) Math.min(chunk.size(), FIXED + LONGEST_HISTORY));
        String description = text(in, BroadcastNote.DESCRIPTION);
        in.position(in.position() + 2 * NAME);
        String date = text(in, BroadcastNote.DATE);
        String time = text(in, BroadcastNote.TIME);
        long firstFrame = in.getLong();
        if (firstFrame < 0) {
            return Optional.empty();
        }
        in.position(FIXED);
        List<String> history =
                text(in, in.remaining()).lines().filter(line -> !line.isBlank()).toList();
        return Optional.of(new BroadcastNote(description, date, time, firstFrame, history));
    }

    private static String text(ByteBuffer in, int length) {
        byte[] bytes = new byte[length];
        in.get(bytes);
        int end = 0;
        while (end < length && bytes[end] != 0) {
            end++;
        }
        return new String(bytes, 0, end, StandardCharsets.ISO_8859_1).strip();
    }
}
