package offtape.report.fault;

/**
 * How one figure is typically moved by a fault.
 *
 * @param figure what is measured, in words with its channel or frequency where that matters
 * @param change which way and how far, in words with the unit
 */
public record SignatureRow(String figure, String change) {}
