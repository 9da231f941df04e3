package offtape.cli.sound;

import java.util.Arrays;
import java.util.List;
import offtape.core.text.Sentences;

/**
 * The channels of a device that are used.
 *
 * @param numbers one or two of them, left first, counted from 1
 */
public record ChannelPair(List<Integer> numbers) {

    private static final Sentences SAID = Sentences.near(ChannelPair.class);

    /** The first two. */
    public static final ChannelPair FIRST = new ChannelPair(List.of(1, 2));

    private static final int MOST = 64;

    /**
     * Copies and checks the numbers.
     *
     * @throws IllegalArgumentException in a plain sentence
     */
    public ChannelPair {
        numbers = List.copyOf(numbers);
        if (numbers.isEmpty() || numbers.size() > 2) {
            throw new IllegalArgumentException(SAID.say("one-or-two-channels"));
        }
        if (numbers.stream().anyMatch(n -> n < 1 || n > MOST)) {
            throw new IllegalArgumentException(SAID.say("channel-range"));
        }
        if (numbers.stream().distinct().count() < numbers.size()) {
            throw new IllegalArgumentException(SAID.say("channel-twice"));
        }
    }

    /**
     * Reads {@code 5,6} or {@code 3}.
     *
     * @throws IllegalArgumentException in a plain sentence
     */
    public static ChannelPair parse(String text) {
        try {
            return new ChannelPair(
                    Arrays.stream(text.split(",", -1))
                            .map(s -> Integer.valueOf(s.strip()))
                            .toList());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(SAID.say("no-channels", text), e);
        }
    }

    /** How many channels a device needs for them. */
    public int width() {
        return numbers.stream().mapToInt(Integer::intValue).max().orElseThrow();
    }

    /** As {@link #parse} reads it. */
    @Override
    public String toString() {
        return String.join(",", numbers.stream().map(String::valueOf).toList());
    }
}
