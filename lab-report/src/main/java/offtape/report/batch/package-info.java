/** What many returns that were measured in one go gave, one row a return. */
package offtape.report.batch;
