/** The handful of figures of a session that are told first, and where they lie in its results. */
package offtape.report.headline;
