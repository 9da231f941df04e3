package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Words that are not understood, and bare tones that are none. */
class BadUsageTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of("nothing at all", 2, "Name a command. See \"offtape --help\".", l -> Lab.line()),
                of(
                        "no such command",
                        2,
                        "There is no command polish. See \"offtape --help\".",
                        l -> Lab.line("polish")),
                of(
                        "no such option",
                        2,
                        "There is no option --polish. See \"offtape --help\".",
                        l -> Lab.line("--polish")),
                of(
                        "no such option of a command",
                        2,
                        "There is no option --polish. See \"offtape prepare --help\".",
                        l -> prepare("--polish")),
                of(
                        "without --out",
                        2,
                        "Missing required option: '--out=DIR'. See \"offtape prepare --help\".",
                        l -> Lab.line("prepare")),
                of(
                        "without return",
                        2,
                        "Missing required parameter: 'RETURN'. See \"offtape measure --help\".",
                        l -> Lab.line("measure", "--programme", "p", "--out", "x")),
                of(
                        "option without value",
                        2,
                        "Missing required parameter for option '--out' (DIR). See "
                                + "\"offtape prepare --help\".",
                        l -> Lab.line("prepare", "--out")),
                of(
                        "one word too many",
                        2,
                        "b.wav is one word more than the command takes. See \"offtape "
                                + "speed --help\".",
                        l -> Lab.line("speed", "a.wav", "b.wav")),
                of(
                        "an option twice",
                        2,
                        "option '--sample-rate' (HZ) should be specified only once. "
                                + "See \"offtape prepare --help\".",
                        l -> prepare("--sample-rate", "48000", "--sample-rate", "96000")),
                of(
                        "no such track format",
                        2,
                        "Invalid value for option '--track-format': \"eight\" is no track format;"
                                + " there are: two-track, butterfly, quarter-track, cassette. See"
                                + " \"offtape measure --help\".",
                        l -> Lab.line(l.measure(l.path("a.wav")), "--track-format", "eight")),
                of(
                        "no such distance of tracks",
                        2,
                        "Invalid value for option '--track-spacing': \"4cm\" is no distance of"
                                + " tracks; write 4.0mm, for instance. See"
                                + " \"offtape measure --help\".",
                        l -> Lab.line(l.measure(l.path("a.wav")), "--track-spacing", "4cm")),
                of(
                        "rate too low",
                        2,
                        "The sample rate must lie between 44100 and 192000 Hz, not "
                                + "32000. See \"offtape prepare --help\".",
                        l -> prepare("--sample-rate", "32000")),
                of(
                        "rate in words",
                        2,
                        "Invalid value for option '--sample-rate': \"48k\" is not a "
                                + "whole number. See \"offtape prepare --help\".",
                        l -> prepare("--sample-rate", "48k")),
                of(
                        "level in words",
                        2,
                        "Invalid value for option '--reference-level': \"loud\" is not "
                                + "a number. See \"offtape prepare --help\".",
                        l -> prepare("--reference-level", "loud")),
                of(
                        "reference too high",
                        2,
                        "The reference level must lie between -40 and -14 dBFS, so "
                                + "that the loudest tone (14 dB above it) stays within full "
                                + "scale. See \"offtape prepare --help\".",
                        l -> prepare("--reference-level", "-6")),
                of(
                        "reference is no number",
                        2,
                        "The reference level must lie between -40 and -14 dBFS, so "
                                + "that the loudest tone (14 dB above it) stays within full "
                                + "scale. See \"offtape prepare --help\".",
                        l -> prepare("--reference-level", "NaN")),
                of(
                        "tape speed in words",
                        2,
                        "Invalid value for option '--tape-speed': \"fast\" is not a "
                                + "tape speed; write 19.05cm/s or 7.5ips, for instance. See "
                                + "\"offtape prepare --help\".",
                        l -> prepare("--tape-speed", "fast")),
                of(
                        "tape speed without unit",
                        2,
                        "Invalid value for option '--tape-speed': \"19.05\" is not a "
                                + "tape speed; write 19.05cm/s or 7.5ips, for instance. See "
                                + "\"offtape prepare --help\".",
                        l -> prepare("--tape-speed", "19.05")),
                of(
                        "tape speed of no machine",
                        2,
                        "Invalid value for option '--tape-speed': \"900ips\" is no "
                                + "speed a tape machine runs at; 4.76cm/s to 76.2cm/s is. See "
                                + "\"offtape prepare --help\".",
                        l -> prepare("--tape-speed", "900ips")),
                of(
                        "no such mode",
                        2,
                        "Invalid value for option '--mode': \"mode\" must be one of "
                                + "reference-tape, two-pass, off-tape, loopback. See \"offtape "
                                + "measure --help\".",
                        l -> mode("sideways")),
                of(
                        "frequency too low",
                        2,
                        "--frequency must lie between 300 and 12000 Hz. See \"offtape "
                                + "speed --help\".",
                        l -> speed(l.path("x.wav"), "--frequency", "50")),
                of(
                        "frequency is no number",
                        2,
                        "--frequency must lie between 300 and 12000 Hz. See \"offtape "
                                + "speed --help\".",
                        l -> speed(l.path("x.wav"), "--frequency", "NaN")),
                of(
                        "a stretch that ends before it begins",
                        2,
                        "--from must not be negative, and --to must lie after it. See \"offtape "
                                + "speed --help\".",
                        l -> speed(l.path("x.wav"), "--from", "20", "--to", "10")),
                of(
                        "two tones at once",
                        3,
                        "No steady tone of five seconds or more between 300 Hz and 12 kHz was found"
                                + " in pair.wav. Two tones sound at once, 1000 Hz and 3150 Hz, and"
                                + " neither rules. Record the tone alone, half a minute or more,"
                                + " without speech or music over it.",
                        l -> speed(l.wav("pair.wav", pair()))),
                of(
                        "a name that no file can have",
                        2,
                        "Invalid value for positional parameter at index 0 (FILE): \"a\uFFFDb.wav\" is no"
                                + " file name here. If it holds letters beyond ASCII, set LC_ALL to a"
                                + " UTF-8 locale such as C.UTF-8. See \"offtape speed --help\".",
                        l -> Lab.line("speed", "a\0b.wav")),
                of(
                        "no file",
                        3,
                        "There is no file {lab}/x.wav. Check the name and the folder.",
                        l -> speed(l.path("x.wav"))),
                of(
                        "silence",
                        3,
                        "No steady tone of five seconds or more between 300 Hz and 12 "
                                + "kHz was found in silence.wav. Record the tone alone, half a "
                                + "minute or more, without speech or music over it.",
                        l -> speed(l.wav("silence.wav", new double[480_000]))),
                of(
                        "noise",
                        3,
                        "No steady tone of five seconds or more between 300 Hz and 12 "
                                + "kHz was found in noise.wav. Record the tone alone, half a "
                                + "minute or more, without speech or music over it.",
                        l -> speed(l.wav("noise.wav", Lab.noise(5, 0.1, 10)))),
                of(
                        "tone of three seconds",
                        3,
                        "No steady tone of five seconds or more between 300 Hz and 12 "
                                + "kHz was found in brief.wav. The longest tone heard has 3150 Hz and "
                                + "lasts 3.0 s. Record the tone alone, half a minute or more, without speech or music over it.",
                        l -> speed(l.wav("brief.wav", Lab.tone(3150, 0.1, 3)))),
                of(
                        "tone too low",
                        3,
                        "No steady tone of five seconds or more between 300 Hz and 12 "
                                + "kHz was found in low.wav. Record the tone alone, half a "
                                + "minute or more, without speech or music over it.",
                        l -> speed(l.wav("low.wav", Lab.tone(100, 0.1, 8)))),
                of(
                        "tone of no usual frequency",
                        3,
                        "The tone in odd.wav has 1999.8 Hz, which is near no usual "
                                + "test tone. It could be 1000 Hz at twice the speed. Say with "
                                + "--frequency what it should have.",
                        l -> speed(l.wav("odd.wav", Lab.tone(2000, 0.1, 8)))),
                of(
                        "tone far from what was said",
                        3,
                        "No steady tone of five seconds or more near 1000 Hz was found "
                                + "in far.wav. The longest tone heard has 3150 Hz and lasts 8.0 s. "
                                + "Record the tone alone, half a minute or more, "
                                + "without speech or music over it.",
                        l ->
                                speed(
                                        l.wav("far.wav", Lab.tone(3150, 0.1, 8)),
                                        "--frequency",
                                        "1000")));
    }

    private static Object[] prepare(String option, String... more) {
        return Stream.concat(
                        Stream.of("prepare", "--out", lab.path("out"), option), Stream.of(more))
                .toArray();
    }

    private static Object[] mode(String mode) {
        return Stream.concat(Stream.of(lab.measure(lab.path("x.wav"))), Stream.of("--mode", mode))
                .toArray();
    }

    private static Object[] speed(Path file, String... more) {
        return Stream.concat(Stream.of("speed", file), Stream.of(more)).toArray();
    }

    private static double[] pair() {
        double[] low = Lab.tone(1000, 0.1, 8);
        double[] high = Lab.tone(3150, 0.1, 8);
        Arrays.setAll(low, i -> low[i] + high[i]);
        return low;
    }
}
