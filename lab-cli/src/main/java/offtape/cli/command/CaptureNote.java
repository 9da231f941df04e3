package offtape.cli.command;

import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.audio.BroadcastNote;

/** What a recording's file says of itself: what it is, what it went through, and when it began. */
record CaptureNote(String description, List<String> machine) {

    /** Keeps the list from changes. */
    CaptureNote {
        machine = List.copyOf(machine);
    }

    /** The return of a programme from the machine that is named, or from one without a name. */
    static CaptureNote ofReturn(SessionSaid said) {
        List<String> machine =
                Stream.of(said.machineName(), said.tape(), speed(said.tapeSpeedMmPerS()))
                        .filter(Objects::nonNull)
                        .toList();
        String name = said.machineName() == null ? "" : " from " + said.machineName();
        String note = said.note() == null ? "" : ". " + said.note();
        return new CaptureNote("Return of a test programme" + name + note, machine);
    }

    private static String speed(Double mmPerS) {
        return mmPerS == null ? null : String.format(Locale.ROOT, "%.4g cm/s", mmPerS / 10);
    }

    /**
     * The note of a recording that begins.
     *
     * @param start when; world time
     * @param sampleRateHz frames a second
     */
    BroadcastNote at(Instant start, int sampleRateHz) {
        OffsetDateTime began = start.atOffset(ZoneOffset.UTC);
        LocalTime time = began.toLocalTime();
        // whole frames since midnight, without the rounding of a product of doubles
        long frame =
                Math.floorDiv(
                        time.truncatedTo(ChronoUnit.MILLIS).toNanoOfDay()
                                / 1_000_000
                                * sampleRateHz,
                        1000L);
        BroadcastNote note =
                new BroadcastNote(
                        description,
                        began.toLocalDate().toString(),
                        String.format(
                                Locale.ROOT,
                                "%02d:%02d:%02d",
                                time.getHour(),
                                time.getMinute(),
                                time.getSecond()),
                        frame,
                        List.of());
        return machine.isEmpty()
                ? note
                : note.through(
                        "A=ANALOGUE", machine.stream().collect(Collectors.joining("; ", "T=", "")));
    }
}
