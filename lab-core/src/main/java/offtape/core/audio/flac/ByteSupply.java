package offtape.core.audio.flac;

/** Where the bytes of a stream come from. */
@FunctionalInterface
public interface ByteSupply {

    /**
     * Fetches the next bytes.
     *
     * @param into filled from its beginning
     * @return how many bytes were fetched, at least one; −1 at the end
     */
    int next(byte[] into);
}
