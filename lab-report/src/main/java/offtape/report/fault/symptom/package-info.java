/**
 * What results show of faults: symptoms, each a number on a scale on which machines spread evenly.
 */
package offtape.report.fault.symptom;
