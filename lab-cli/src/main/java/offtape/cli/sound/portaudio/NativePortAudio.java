package offtape.cli.sound.portaudio;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;

/** The system's own PortAudio library, version 19. */
final class NativePortAudio implements PortAudioApi {

    private static final List<String> LINUX = List.of("libportaudio.so.2", "portaudio");
    private static final List<String> MAC =
            List.of(
                    "portaudio",
                    "/opt/homebrew/lib/libportaudio.2.dylib",
                    "/usr/local/lib/libportaudio.2.dylib",
                    "/opt/local/lib/libportaudio.2.dylib");
    private static final List<String> WINDOWS =
            List.of(
                    "portaudio",
                    "libportaudio64bit",
                    "portaudio_x64",
                    "libportaudio-2",
                    "libportaudio");

    private static final long FLOAT_32 = 1;
    private static final long INT_32 = 2;
    private static final long NEITHER_CLIP_NOR_DITHER = 3;
    private static final int SIDE_BYTES = 32;

    private NativePortAudio() {}

    /** The library, looked for once. */
    private static final class Holder {

        static final Optional<PortAudioApi> LIBRARY = look();

        private Holder() {}
    }

    /** The library, if the system has it. */
    static Optional<PortAudioApi> find() {
        return Holder.LIBRARY;
    }

    private static Optional<PortAudioApi> look() {
        try {
            if (Native.POINTER_SIZE != 8) {
                return Optional.empty();
            }
            List<String> names = Platform.isWindows() ? WINDOWS : Platform.isMac() ? MAC : LINUX;
            return names.stream().flatMap(n -> library(n).stream()).findFirst().map(l -> bind(l));
        } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
            // JNA has nothing for this system
            return Optional.empty();
        }
    }

    private static Optional<NativeLibrary> library(String name) {
        try {
            return Optional.of(NativeLibrary.getInstance(name));
        } catch (UnsatisfiedLinkError e) {
            return Optional.empty();
        }
    }

    private static PortAudioApi bind(NativeLibrary library) {
        Native.register(PortAudioNatives.class, library);
        if (Platform.isLinux()) {
            HostMessages.silence();
        }
        return new NativePortAudio();
    }

    @Override
    public int initialize() {
        return PortAudioNatives.Pa_Initialize();
    }

    @Override
    public void terminate() {
        PortAudioNatives.Pa_Terminate();
    }

    @Override
    public int deviceCount() {
        return Math.max(0, PortAudioNatives.Pa_GetDeviceCount());
    }

    /** Fields of {@code PaDeviceInfo} by their places on 64-bit systems. */
    @Override
    public Device device(int number) {
        Pointer info = PortAudioNatives.Pa_GetDeviceInfo(number);
        return new Device(
                text(info.getPointer(8)),
                info.getInt(16),
                info.getInt(20),
                info.getInt(24),
                info.getDouble(64));
    }

    /** Fields of {@code PaHostApiInfo}. */
    @Override
    public HostApi hostApi(int number) {
        Pointer info = PortAudioNatives.Pa_GetHostApiInfo(number);
        return new HostApi(
                info.getInt(4), text(info.getPointer(8)), info.getInt(20), info.getInt(24));
    }

    @Override
    public int defaultHostApi() {
        return PortAudioNatives.Pa_GetDefaultHostApi();
    }

    @Override
    public int isFormatSupported(Side input, Side output, double sampleRateHz) {
        return PortAudioNatives.Pa_IsFormatSupported(
                parameters(input, FLOAT_32), parameters(output, INT_32), sampleRateHz);
    }

    @Override
    public Opened open(Side input, Side output, double sampleRateHz) {
        Memory stream = new Memory(8);
        stream.clear();
        int code =
                PortAudioNatives.Pa_OpenStream(
                        stream,
                        parameters(input, FLOAT_32),
                        parameters(output, INT_32),
                        sampleRateHz,
                        0,
                        NEITHER_CLIP_NOR_DITHER,
                        null,
                        null);
        return new Opened(code, stream.getLong(0));
    }

    /** Fields of {@code PaStreamParameters}. */
    private static Memory parameters(Side side, long format) {
        if (side == null) {
            return null;
        }
        Memory memory = new Memory(SIDE_BYTES);
        memory.clear();
        memory.setInt(0, side.device());
        memory.setInt(4, side.channels());
        memory.setLong(8, format);
        memory.setDouble(16, side.latencySeconds());
        return memory;
    }

    @Override
    public int start(long stream) {
        return PortAudioNatives.Pa_StartStream(stream);
    }

    @Override
    public int abort(long stream) {
        return PortAudioNatives.Pa_AbortStream(stream);
    }

    @Override
    public int close(long stream) {
        return PortAudioNatives.Pa_CloseStream(stream);
    }

    /** A field of {@code PaStreamInfo}. */
    @Override
    public double outputLatencySeconds(long stream) {
        return PortAudioNatives.Pa_GetStreamInfo(stream).getDouble(16);
    }

    @Override
    public int readable(long stream) {
        return PortAudioNatives.Pa_GetStreamReadAvailable(stream);
    }

    @Override
    public int writable(long stream) {
        return PortAudioNatives.Pa_GetStreamWriteAvailable(stream);
    }

    @Override
    public int read(long stream, ByteBuffer block, int frames) {
        return PortAudioNatives.Pa_ReadStream(stream, block, frames);
    }

    @Override
    public int write(long stream, ByteBuffer block, int frames) {
        return PortAudioNatives.Pa_WriteStream(stream, block, frames);
    }

    @Override
    public String errorText(int code) {
        return text(PortAudioNatives.Pa_GetErrorText(code));
    }

    private static String text(Pointer chars) {
        return chars == null ? "" : chars.getString(0, "UTF-8");
    }
}
