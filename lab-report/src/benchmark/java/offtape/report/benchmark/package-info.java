/**
 * How long the parts of a measurement take, one subject a class. Nothing is asserted: figures are
 * gathered by {@code lab-report/src/benchmark/run}. All input is made here by the project's own
 * programme and simulated machine, from fixed seeds.
 */
package offtape.report.benchmark;
