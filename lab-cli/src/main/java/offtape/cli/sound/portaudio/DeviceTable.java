package offtape.cli.sound.portaudio;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import offtape.cli.sound.SoundTroubleException;
import offtape.core.text.Sentences;

/** The devices that the library found, and which of them a name means. */
final class DeviceTable {

    private static final Sentences SAID = Sentences.near(DeviceTable.class);

    /** DirectSound and WDM-KS: the library cannot read or write there, only call back. */
    private static final Set<Integer> WITHOUT_READING = Set.of(1, 11);

    /**
     * A device with the way to it.
     *
     * @param number the library's number for it
     * @param hostApi number of its host interface
     * @param label by which it is listed, unlike for each
     */
    record Entry(int number, int hostApi, String label, PortAudioApi.Device device) {}

    private final PortAudioApi api;
    private final List<Entry> entries = new ArrayList<>();

    /** Reads them from the library, which is initialised. */
    DeviceTable(PortAudioApi api) {
        this.api = api;
        for (int i = 0; i < api.deviceCount(); i++) {
            PortAudioApi.Device device = api.device(i);
            PortAudioApi.HostApi host = api.hostApi(device.hostApi());
            if (!WITHOUT_READING.contains(host.type())) {
                String label = host.name() + ": " + device.name();
                entries.add(new Entry(i, device.hostApi(), label, device));
            }
        }
    }

    /** All that can be used. */
    List<Entry> entries() {
        return List.copyOf(entries);
    }

    /**
     * The device that plays.
     *
     * @param name label, name or part of one, or null for the usual device
     * @param other name of the device for the other direction, or null
     * @throws SoundTroubleException if there is none, or more than one
     */
    Entry output(String name, String other) {
        return name == null ? usual(other, false) : named(name, DeviceTable::plays);
    }

    /** The device that records, in the same way. */
    Entry input(String name, String other) {
        return name == null ? usual(other, true) : named(name, DeviceTable::records);
    }

    private static boolean plays(Entry entry) {
        return entry.device().outputs() > 0;
    }

    private static boolean records(Entry entry) {
        return entry.device().inputs() > 0;
    }

    // one stream stays within a host interface, so the device of the other direction tells which
    private Entry usual(String other, boolean input) {
        Predicate<Entry> fit = input ? DeviceTable::plays : DeviceTable::records;
        int hostApi = other == null ? api.defaultHostApi() : named(other, fit).hostApi();
        if (hostApi >= 0) {
            PortAudioApi.HostApi host = api.hostApi(hostApi);
            int number = input ? host.defaultInput() : host.defaultOutput();
            for (Entry e : entries) {
                if (e.number() == number) {
                    return e;
                }
            }
        }
        throw new SoundTroubleException(
                SAID.say(input ? "portaudio-no-input" : "portaudio-no-output"));
    }

    private Entry named(String name, Predicate<Entry> fit) {
        String wanted = name.toLowerCase(Locale.ROOT);
        List<Predicate<Entry>> ways =
                List.of(
                        e -> e.label().equals(name),
                        e -> e.device().name().equals(name),
                        e -> e.label().toLowerCase(Locale.ROOT).contains(wanted));
        for (Predicate<Entry> way : ways) {
            List<Entry> like = entries.stream().filter(fit.and(way)).toList();
            if (like.size() == 1) {
                return like.get(0);
            }
            if (!like.isEmpty()) {
                throw new SoundTroubleException(SAID.say("portaudio-several", name, labels(like)));
            }
        }
        throw new SoundTroubleException(SAID.say("portaudio-none", name));
    }

    private static String labels(List<Entry> entries) {
        return entries.stream().map(e -> "\"" + e.label() + "\"").collect(Collectors.joining(", "));
    }
}
