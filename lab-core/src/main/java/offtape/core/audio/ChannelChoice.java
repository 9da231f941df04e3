package offtape.core.audio;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;

/**
 * Which channels of a recording are measured: one or two, counted from 1, the left one first.
 *
 * @param numbers one or two different numbers, each 1 or more
 */
public record ChannelChoice(List<Integer> numbers) {

    private static final Sentences SAID = Sentences.near(ChannelChoice.class);

    private static final Pattern FORM = Pattern.compile("[1-9]\\d{0,3}(,[1-9]\\d{0,3})?");

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if they are not one or two different numbers from 1 on; the
     *     message is for the user
     */
    public ChannelChoice {
        numbers = List.copyOf(numbers);
        boolean isCounted = numbers.stream().allMatch(n -> n >= 1);
        if (numbers.isEmpty() || numbers.size() > 2 || !isCounted) {
            throw new IllegalArgumentException(SAID.say("channels.form"));
        }
        if (numbers.stream().distinct().count() < numbers.size()) {
            throw new IllegalArgumentException(SAID.say("channels.same", numbers.get(0)));
        }
    }

    /**
     * Reads {@code 3,4} or {@code 2}.
     *
     * @throws IllegalArgumentException if the text is something else; the message is for the user
     */
    public static ChannelChoice parse(String text) {
        if (!FORM.matcher(text).matches()) {
            throw new IllegalArgumentException(SAID.say("channels.not-named", text));
        }
        return new ChannelChoice(Arrays.stream(text.split(",")).map(Integer::valueOf).toList());
    }

    /**
     * The first two channels of a recording, or the recording itself if it has no more.
     *
     * @return the recording, or {@link ChosenChannels} that were not asked for
     */
    public static AudioSource firstTwo(AudioSource recording) {
        return recording.channels() > 2
                ? new ChosenChannels(recording, List.of(1, 2), false)
                : recording;
    }

    /**
     * These channels of a recording.
     *
     * @param recording closed together with what is returned
     * @throws IllegalArgumentException if it has fewer channels; the message, for the user, names
     *     how many
     */
    public AudioSource of(AudioSource recording) {
        int has = recording.channels();
        for (int number : numbers) {
            if (number > has) {
                throw new IllegalArgumentException(
                        has == 1
                                ? SAID.say("channels.one-only", recording.name(), number)
                                : SAID.say("channels.too-few", recording.name(), has, number));
            }
        }
        return new ChosenChannels(recording, numbers, true);
    }

    /** As it is written: {@code 3,4} or {@code 2}. */
    @Override
    public String toString() {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(","));
    }
}
