/**
 * Which faults explain a session's symptoms best: Bayesian, by signatures learned from simulated
 * machines.
 */
package offtape.report.fault.rank;
