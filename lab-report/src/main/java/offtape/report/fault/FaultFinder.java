package offtape.report.fault;

import offtape.report.result.Results;

/** Looks for what is wrong with a machine. */
public final class FaultFinder {

    private FaultFinder() {}

    /** Likely causes of what a session shows. */
    public static FaultFinding find(Results results) {
        return FaultFinding.NONE;
    }
}
