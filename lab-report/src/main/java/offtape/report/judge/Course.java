package offtape.report.judge;

import java.util.List;
import offtape.report.cost.Bill;
import offtape.report.cost.Bill.Worth;
import offtape.report.fault.FaultNote;

/** What is decided. */
enum Course {
    /** It is good enough. */
    KEEP("keep"),
    /** It is to be mended. */
    SERVICE("service"),
    /** Mending it does not pay, or cannot be done. */
    LET_GO("let-go"),
    /** Too little is known. */
    OPEN(null);

    private final String key;

    Course(String key) {
        this.key = key;
    }

    /** As in the results; null if nothing is decided. */
    String key() {
        return key;
    }

    /**
     * What a situation calls for. A verdict needs figures: what is not known decides nothing, and
     * what is known decides alone only if it does so beyond doubt.
     */
    static Course of(Situation s) {
        if (!s.voids().isEmpty()) {
            return OPEN;
        }
        boolean isDecisive = !s.ownFails().isEmpty() || s.hasDecisiveFault();
        boolean isComplete = s.gaps().isEmpty();
        if (isDecisive || isComplete && !s.inside().isEmpty()) {
            return isPastMending(s) ? LET_GO : SERVICE;
        }
        boolean isMet = s.isJudged() && s.checks("fail").isEmpty();
        return isMet && isComplete ? KEEP : OPEN;
    }

    private static boolean isPastMending(Situation s) {
        if (s.economics() == null) {
            return false;
        }
        if (!isMendable(s)) {
            return true;
        }
        Worth worth = bill(s).worth();
        return worth == Worth.NO || worth == Worth.HARDLY;
    }

    /** Whether what is wrong can be mended, whatever it costs. */
    static boolean isMendable(Situation s) {
        boolean isLost =
                s.beyondRepair().stream()
                        .anyMatch(
                                f -> !s.isJudged() || s.ownFails().stream().anyMatch(f::explains));
        return s.economics() == null
                || !isLost && (s.unexplained().isEmpty() || s.economics().canMendUnknown());
    }

    /** What mending costs; only where the owner gave figures. */
    static Bill bill(Situation s) {
        List<FaultNote> faults = s.inside().stream().map(Suspect::note).toList();
        boolean isPartUnknown =
                !s.unexplained().isEmpty() && s.economics().otherRepairs().isEmpty();
        return Bill.of(s.economics(), faults, isPartUnknown);
    }
}
