package offtape.report.fault.symptom;

/** What a symptom becomes where several faults move it. */
public enum Joining {
    /** Each adds its own change: decibels of a response. */
    SUM,
    /** The largest covers the others: the strongest line, the loudest hum. */
    LARGEST
}
