package offtape.report.fault;

/**
 * One form of a fault that a simulated machine can be given.
 *
 * @param code of the fault
 * @param variant which form of it, in words
 * @param side {@code both} or {@code right}
 * @param mirrored whether its mirror image is a form of its own
 * @param fastestMmPerS tape speed above which it does too little to be a fault
 * @param giver puts it into a machine
 */
record FaultForm(
        String code,
        String variant,
        String side,
        boolean mirrored,
        double fastestMmPerS,
        Giver giver) {

    /** At every tape speed. */
    static final double ANY = Double.MAX_VALUE;

    /** The same up to a tape speed. */
    FaultForm upTo(double mmPerS) {
        return new FaultForm(code, variant, side, mirrored, mmPerS, giver);
    }

    /** Whether it can be had in its whole range of severity at a machine's tape speed. */
    boolean suitsWholly(Workshop machine) {
        return machine.mmPerS() <= fastestMmPerS / 2;
    }

    /** Whether it is a fault at a machine's tape speed. */
    boolean suits(Workshop machine) {
        return machine.mmPerS() <= fastestMmPerS;
    }

    /** Puts a fault into a machine. */
    interface Giver {

        /**
         * The machine with the fault.
         *
         * @param severity 0 (just worth mending) to 1 (gross)
         */
        Workshop give(Workshop machine, double severity, Draws draw);
    }

    /** Code and variant. */
    String name() {
        return code + "-" + variant.replace(' ', '-').replace(",", "");
    }

    static FaultForm both(String code, String variant, Giver giver) {
        return new FaultForm(code, variant, "both", false, ANY, giver);
    }

    static FaultForm right(String code, String variant, Giver giver) {
        return new FaultForm(code, variant, "right", false, ANY, giver);
    }
}
