package offtape.report.measure.loopback;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.report.result.InterfaceShare;
import offtape.report.result.Response;

/** How much an interface has to do with the quietest response of each channel. */
public final class ResponseShare {

    private static final Sentences SAID = Sentences.near(ResponseShare.class);

    private static final double FROM_HZ = 40;
    private static final double TO_HZ = 16_000;

    /** A correction of this much doubles whatever changed in the interface since. */
    private static final double LIMITING_DB = 3;

    private ResponseShare() {}

    /**
     * One entry a channel that has a response: the interface's largest departure between 40 Hz and
     * 16 kHz.
     */
    public static List<InterfaceShare.Entry> entries(
            KnownInterface known, List<Response> responses) {
        double quiet = responses.stream().mapToDouble(Response::levelDb).min().orElse(0);
        List<InterfaceShare.Entry> entries = new ArrayList<>();
        for (Response r : responses) {
            Optional<InterfaceResponse> own = known.response(r.channel());
            boolean isTold = r.frequencyHz().length > 0;
            if (r.levelDb() == quiet && isTold && own.isPresent()) {
                entries.add(entry(r, own.get()));
            }
        }
        return entries;
    }

    private static InterfaceShare.Entry entry(Response r, InterfaceResponse own) {
        double most = 0;
        for (double hz : r.frequencyHz()) {
            double db = hz >= FROM_HZ && hz <= TO_HZ ? own.levelDb(hz) : 0;
            most = Math.abs(db) > Math.abs(most) ? db : most;
        }
        return new InterfaceShare.Entry(
                SAID.say("response"),
                r.channel(),
                "dB",
                most,
                null,
                null,
                Math.abs(most) > LIMITING_DB,
                SAID.say("taken-out"));
    }
}
