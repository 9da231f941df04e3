package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Returns that cannot be measured: exit code 3, a sentence, and nothing written. */
class BadReturnTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static byte[] good;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        good = Wav.PCM_24.of(Mini.RATE, Mini.sound());
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of(
                        "absent",
                        3,
                        "There is no file {lab}/nowhere.wav. Check the name and the folder.",
                        l -> l.measure(l.path("nowhere.wav"))),
                of(
                        "a folder",
                        3,
                        "{lab}/programme is a folder. Name the sound file inside it that is meant.",
                        l -> l.measure(l.programme())),
                of(
                        "empty",
                        3,
                        "{lab}/empty.wav is empty. Export or copy the recording again.",
                        l -> l.measure(l.file("empty.wav", ""))),
                of(
                        "text",
                        3,
                        "{lab}/text.wav is a text file. Export the recording as WAV "
                                + "and name that file.",
                        l -> l.measure(l.file("text.wav", "This is no sound at all."))),
                of(
                        "FLAC",
                        3,
                        "{lab}/flac.wav is a damaged or cut FLAC file: the file ends too "
                                + "early. Export or copy the recording again.",
                        l -> l.measure(l.file("flac.wav", "fLaC00000000000000000000"))),
                of(
                        "Ogg",
                        3,
                        "{lab}/ogg.flac is an Ogg file. Export the recording as WAV "
                                + "and name that file.",
                        l -> l.measure(l.file("ogg.flac", "OggS00000000000000000000"))),
                of(
                        "eight bytes",
                        3,
                        "{lab}/eight.wav is only 8 bytes long and no sound file. Export "
                                + "or copy the recording again.",
                        l -> l.measure(l.file("eight.wav", "RIFF0000"))),
                of(
                        "cut in the format",
                        3,
                        "{lab}/head.wav is a damaged or cut WAV file: the sound "
                                + "('data') was not found in it. Export or copy the recording "
                                + "again.",
                        l -> l.measure(cut("head.wav", 30))),
                of(
                        "cut before the sound",
                        3,
                        "{lab}/nodata.wav is a damaged or cut WAV file: the sound "
                                + "('data') was not found in it. Export or copy the recording "
                                + "again.",
                        l -> l.measure(cut("nodata.wav", 38))),
                of(
                        "no sound",
                        3,
                        "nosound.wav is cut short beyond use: it lasts 0.0 s, and the "
                                + "programme 22.3 s. Record the whole programme again, from "
                                + "before its first marker to after its last.",
                        l -> l.measure(cut("nosound.wav", 44))),
                of(
                        "a tenth of a second",
                        3,
                        "tenth.wav is cut short beyond use: it lasts 0.1 s, and the "
                                + "programme 22.3 s. Record the whole programme again, from "
                                + "before its first marker to after its last.",
                        l -> l.measure(cut("tenth.wav", 28_844))),
                of(
                        "cut before any whole part",
                        3,
                        "early.wav is cut short beyond use: it lasts 3.0 s, and the "
                                + "programme 22.3 s. Record the whole programme again, from "
                                + "before its first marker to after its last.",
                        l -> l.measure(cut("early.wav", 850_000))),
                of(
                        "compressed",
                        3,
                        "{lab}/adpcm.wav cannot be used: its sound is compressed: IMA "
                                + "ADPCM (tag 0x0011). Export the recording as linear WAV (16 or "
                                + "24 bit, or float).",
                        l -> l.measure(patched("adpcm.wav", 20, 0x0002_0011))),
                of(
                        "no channels",
                        3,
                        "{lab}/none.wav cannot be used: its header states no channels. "
                                + "Export the recording as linear WAV (16 or 24 bit, or float).",
                        l -> l.measure(patched("none.wav", 20, 0x0000_0001))),
                of(
                        "rate of nought",
                        3,
                        "{lab}/rate.wav cannot be used: its header states a sample "
                                + "rate of 0 Hz. Export the recording as linear WAV (16 or 24 "
                                + "bit, or float).",
                        l -> l.measure(patched("rate.wav", 24, 0))),
                of(
                        "silent",
                        3,
                        "silent.wav is silent from beginning to end. Check cables, "
                                + "input and record level, then record again.",
                        l -> l.measure(l.wav("silent.wav", new double[1_200_000]))),
                of(
                        "noise only",
                        3,
                        "The programme was not found in noise.wav. Check that this is "
                                + "the return of the programme in the folder given with "
                                + "--programme, that its level is not too low, and that the tape "
                                + "ran within 20 % of its speed or at half or twice that.",
                        l ->
                                l.measure(
                                        l.wav(
                                                "noise.wav",
                                                Lab.noise(1, 0.1, 25),
                                                Lab.noise(2, 0.1, 25)))),
                of(
                        "another programme",
                        3,
                        "The programme was not found in other.wav. Check that this is "
                                + "the return of the programme in the folder given with "
                                + "--programme, that its level is not too low, and that the tape "
                                + "ran within 20 % of its speed or at half or twice that.",
                        l -> l.measure(l.wav("other.wav", other()))),
                of(
                        "markers blanked",
                        3,
                        "blank.wav sounds like the programme, but none of its markers "
                                + "is in it. Record the whole programme again, from before its "
                                + "first marker to after its last.",
                        l -> l.measure(l.wav("blank.wav", unmarked()))),
                of(
                        "not a number",
                        3,
                        "{lab}/nan.wav holds a sample that is not a finite number at "
                                + "10.000 s in channel 1. Export the recording again, without "
                                + "plug-ins, or as 24-bit WAV.",
                        l -> l.measure(notANumber(l))));
    }

    private static Path cut(String name, int bytes) {
        return lab.file(name, Arrays.copyOf(good, bytes));
    }

    private static Path patched(String name, int offset, int value) {
        return lab.file(name, Lab.patched(good, offset, value));
    }

    private static Path notANumber(Lab l) {
        double[] x = Mini.sound()[0];
        x[480_000] = Double.NaN;
        return l.file("nan.wav", Wav.FLOAT_32.of(Mini.RATE, x, x));
    }

    private static double[] other() {
        double[] x = new double[30 * Mini.RATE];
        for (int i = 0; i < x.length; i++) {
            double second = (double) i / Mini.RATE;
            double hz = 200 + 100 * (int) (second * 4 % 17);
            x[i] = 0.1 * Math.sin(2 * Math.PI * hz * second);
        }
        return x;
    }

    private static double[][] unmarked() {
        double[][] sound = Mini.sound();
        for (double[] x : sound) {
            Arrays.fill(x, 0, (int) (0.9 * Mini.RATE), 0);
            Arrays.fill(x, (int) (21.5 * Mini.RATE), x.length, 0);
        }
        return sound;
    }
}
