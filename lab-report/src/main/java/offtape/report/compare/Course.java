package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Aim;

/**
 * A figure over many sessions.
 *
 * @param name what it is
 * @param channel {@code left} or {@code right}, or null of a figure of the whole machine
 * @param signed whether its plus sign says something
 * @param aim which way is better
 * @param points one a session, in order of time
 * @param trend since the last service, or over all sessions if none was told
 */
public record Course(
        String name,
        @JsonInclude(JsonInclude.Include.NON_NULL) String channel,
        @JsonIgnore boolean signed,
        @JsonIgnore Aim aim,
        List<Point> points,
        Trend trend) {

    /** Copies the list. */
    public Course {
        points = List.copyOf(points);
    }

    /**
     * The figure in one session.
     *
     * @param days since the first session
     * @param figure what was measured
     */
    public record Point(double days, Quantity figure) {}

    /** Its name and channel. */
    @JsonIgnore
    public String label() {
        return channel == null ? name : name + ", " + channel;
    }
}
