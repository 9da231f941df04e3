package offtape.core.output;

import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a file will appear that is just being made in a workplace: what a user calls it. */
public final class StagedPlace {

    private static final Pattern STAGING =
            Pattern.compile("\\.(?:(.+)\\.)?offtape" + Workplace.STAGING, Pattern.DOTALL);

    private StagedPlace() {}

    /**
     * The place for which a file is made.
     *
     * @param file absolute
     * @return that of {@code file} itself unless it lies in a workplace
     */
    public static Path of(Path file) {
        for (Path fresh = file.getParent(); fresh != null; fresh = fresh.getParent()) {
            Optional<Path> place = made(file, fresh);
            if (place.isPresent()) {
                return place.get();
            }
        }
        return file;
    }

    private static Optional<Path> made(Path file, Path fresh) {
        Path staging = fresh.getParent();
        if (staging == null || staging.getFileName() == null || !fresh.endsWith(Workplace.FRESH)) {
            return Optional.empty();
        }
        Matcher name = STAGING.matcher(staging.getFileName().toString());
        if (!name.matches()) {
            return Optional.empty();
        }
        Path base = staging.resolveSibling("");
        Path below = fresh.relativize(file);
        String beside = name.group(1);
        // a workplace beside a file or folder has its name; that of a file holds the file itself
        boolean isDirect = beside == null || below.toString().equals(beside);
        return Optional.of(isDirect ? base.resolve(below) : base.resolve(beside).resolve(below));
    }
}
