/** The records that are results.json, and their reading and writing. */
package offtape.report.result;
