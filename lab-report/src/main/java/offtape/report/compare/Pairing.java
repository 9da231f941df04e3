package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import offtape.report.headline.Subject;
import offtape.report.result.Session;

/** What two sessions that are set against each other have to do with each other. */
public enum Pairing {
    /** One machine, before and after something was done to it. */
    SERVICE,
    /** Two machines, neither of which comes first. */
    MACHINES;

    /** The name in files and at the command line, such as {@code machines}. */
    @JsonValue
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * What the names tell: two machines if both are given and differ by more than capitals and
     * spaces. A name that is missing tells nothing, and then a service is what is usually compared.
     */
    public static Pairing of(Session first, Session second) {
        return Subject.isNamed(first)
                        && Subject.isNamed(second)
                        && !plain(first).equals(plain(second))
                ? MACHINES
                : SERVICE;
    }

    private static String plain(Session session) {
        return session.machineName().strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
