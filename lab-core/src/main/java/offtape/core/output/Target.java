package offtape.core.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/** The place an output goes, seen through symbolic links. */
final class Target {

    private static final Sentences SAID = Sentences.near(Target.class);

    private Target() {}

    /**
     * The absolute place that a path leads to. A link stays a link: what it points at is written.
     *
     * @throws RefusedOutputException if a link leads nowhere or a part of the way is not a folder
     */
    static Path of(Path named) {
        Path absolute = named.toAbsolutePath().normalize();
        Path there = nearestExisting(absolute);
        try {
            Path real = there.toRealPath();
            if (!there.equals(absolute) && !Files.isDirectory(real)) {
                throw new RefusedOutputException(SAID.say("way-is-file", named, there));
            }
            return real.resolve(there.relativize(absolute)).normalize();
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("dead-link", there), e);
        }
    }

    private static Path nearestExisting(Path absolute) {
        Path there = absolute;
        while (!Files.exists(there, LinkOption.NOFOLLOW_LINKS) && there.getParent() != null) {
            there = there.getParent();
        }
        return there;
    }
}
