package offtape.cli.sound.portaudio;

import com.sun.jna.Pointer;
import java.nio.ByteBuffer;

/**
 * The library's functions by their own names. Streams are addresses, and {@code unsigned long} is a
 * Java long: in a 64-bit system's registers and stack places both widths of it are the same, and so
 * calls need no objects. Answers of that type are small, so their lower half is enough.
 */
final class PortAudioNatives {

    private PortAudioNatives() {}

    static native int Pa_Initialize();

    static native int Pa_Terminate();

    static native int Pa_GetDeviceCount();

    static native Pointer Pa_GetDeviceInfo(int device);

    static native Pointer Pa_GetHostApiInfo(int hostApi);

    static native int Pa_GetDefaultHostApi();

    static native int Pa_IsFormatSupported(Pointer input, Pointer output, double sampleRate);

    static native int Pa_OpenStream(
            Pointer stream,
            Pointer input,
            Pointer output,
            double sampleRate,
            long framesPerBuffer,
            long flags,
            Pointer callback,
            Pointer userData);

    static native int Pa_StartStream(long stream);

    static native int Pa_AbortStream(long stream);

    static native int Pa_CloseStream(long stream);

    static native Pointer Pa_GetStreamInfo(long stream);

    static native int Pa_GetStreamReadAvailable(long stream);

    static native int Pa_GetStreamWriteAvailable(long stream);

    static native int Pa_ReadStream(long stream, ByteBuffer buffer, long frames);

    static native int Pa_WriteStream(long stream, ByteBuffer buffer, long frames);

    static native Pointer Pa_GetErrorText(int code);
}
