package offtape.cli.guide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.DeviceSide;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Phrases;

/** Asks which devices play and record. */
final class DeviceQuestions {

    private final Terminal terminal;
    private final Phrases phrases;
    private final List<SoundDevice> devices;

    DeviceQuestions(Terminal terminal, Phrases phrases, SoundLayers layers) {
        this.terminal = terminal;
        this.phrases = phrases;
        this.devices = layers.all().stream().flatMap(l -> l.devices().stream()).toList();
    }

    /** The options for the answers; empty if the questions were broken off or nothing is there. */
    Optional<List<String>> options() {
        List<String> words = new ArrayList<>();
        Optional<SoundDevice> output = choose("plays", SoundDevice::playback, null);
        if (output.isEmpty()) {
            return Optional.empty();
        }
        String layer = output.get().layer();
        words.addAll(List.of("--layer", layer, "--output", output.get().name()));
        if (!channels(words, "--output-channels", output.get().playback())) {
            return Optional.empty();
        }
        Optional<SoundDevice> input = choose("records", SoundDevice::capture, layer);
        if (input.isEmpty()) {
            return Optional.empty();
        }
        words.addAll(List.of("--input", input.get().name()));
        return channels(words, "--input-channels", input.get().capture())
                ? Optional.of(words)
                : Optional.empty();
    }

    private Optional<SoundDevice> choose(
            String what, Function<SoundDevice, DeviceSide> side, String layer) {
        List<SoundDevice> able =
                devices.stream()
                        .filter(d -> layer == null || d.layer().equals(layer))
                        .filter(d -> side.apply(d) != null && side.apply(d).opens())
                        .toList();
        if (able.isEmpty()) {
            terminal.message(phrases.say("guide.none-" + what));
            return Optional.empty();
        }
        for (int i = 0; i < able.size(); i++) {
            terminal.message(
                    "  "
                            + phrases.say(
                                    "guide.device",
                                    i + 1,
                                    able.get(i).name(),
                                    able.get(i).layer(),
                                    side.apply(able.get(i)).channels()));
        }
        return terminal.answer(phrases.say("guide.which-" + what), "1")
                .flatMap(answer -> numbered(able, answer));
    }

    private Optional<SoundDevice> numbered(List<SoundDevice> able, String answer) {
        for (int i = 0; i < able.size(); i++) {
            if (answer.equals(Integer.toString(i + 1))) {
                return Optional.of(able.get(i));
            }
        }
        terminal.message(phrases.say("guide.no-number", answer));
        return Optional.empty();
    }

    private boolean channels(List<String> words, String option, DeviceSide side) {
        if (side.channels() <= 2) {
            return true;
        }
        Optional<String> answer =
                terminal.answer(phrases.say("guide.channels"), ChannelPair.FIRST.toString());
        try {
            answer.ifPresent(a -> words.addAll(List.of(option, ChannelPair.parse(a).toString())));
            return answer.isPresent();
        } catch (IllegalArgumentException e) {
            terminal.message(phrases.told(e.getMessage()));
            return false;
        }
    }
}
