package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import offtape.core.audio.flac.FlacDecoder;
import offtape.core.audio.flac.FlacFault;
import offtape.core.audio.flac.StreamInfo;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** The sound of a FLAC stream on its way into a copy, with its checksum. */
final class FlacSound {

    private static final Sentences SAID = Sentences.near(FlacSound.class);

    private final Path path;
    private final FlacDecoder decoder;
    private final StreamInfo info;
    private final DecodedCopy copy;
    private final MessageDigest digest;
    private final List<String> notes = new ArrayList<>();

    FlacSound(Path path, FlacDecoder decoder, DecodedCopy copy) {
        this.path = path;
        this.decoder = decoder;
        this.info = decoder.info();
        this.copy = copy;
        try {
            this.digest = MessageDigest.getInstance("MD5");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has MD5", e);
        }
    }

    /** How a sample lies in the copy: in the upper bits of whole bytes. */
    SampleCoding coding() {
        return SampleCoding.signed(info.bits(), ByteOrder.LITTLE_ENDIAN);
    }

    private int bytes() {
        return (info.bits() + 7) / 8;
    }

    /** What does not agree though the sound can be used. */
    List<String> notes() {
        return notes;
    }

    /**
     * Decodes everything.
     *
     * @throws UnusableInputException if a block is damaged
     */
    void decode() {
        boolean isWhole = true;
        try {
            for (int n = decoder.next(); n > 0; n = decoder.next()) {
                keep(n);
            }
        } catch (FlacFault e) {
            isWhole = false;
            if (!e.isCutShort()) {
                throw damaged(e);
            }
        }
        check(isWhole);
    }

    private UnusableInputException damaged(FlacFault fault) {
        return new UnusableInputException(
                SAID.say("flac.damaged-at", path, seconds(decoder.frames()), fault.getMessage()),
                fault);
    }

    private void check(boolean isWhole) {
        long stated = info.frames();
        long there = decoder.frames();
        if (there < stated) {
            notes.add(SAID.say("note.cut-short", seconds(stated), seconds(there)));
        } else if (!isWhole) {
            notes.add(SAID.say("note.within-block"));
        } else if (!info.md5().isEmpty()
                && !info.md5().equals(HexFormat.of().formatHex(digest.digest()))) {
            notes.add(SAID.say("note.checksum"));
        }
        if (there == 0) {
            notes.add(SAID.say("note.no-sound"));
        }
    }

    private String seconds(long frames) {
        return String.format(Locale.ROOT, "%.1f s", (double) frames / info.sampleRateHz());
    }

    private void keep(int count) {
        int spareBits = 8 * bytes() - info.bits();
        ByteBuffer plain = packed(count, 0);
        digest.update(plain.duplicate());
        copy.append(spareBits == 0 ? plain : packed(count, spareBits));
    }

    /** Frame after frame, each sample in whole bytes, the least significant one first. */
    private ByteBuffer packed(int count, int shift) {
        ByteBuffer out = ByteBuffer.allocate(count * info.channels() * bytes());
        for (int i = 0; i < count; i++) {
            for (int c = 0; c < info.channels(); c++) {
                long sample = decoder.sample(c, i) << shift;
                for (int b = 0; b < bytes(); b++) {
                    out.put((byte) (sample >> 8 * b));
                }
            }
        }
        return out.flip();
    }
}
