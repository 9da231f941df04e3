package offtape.cli.command;

import offtape.report.cost.Economics;
import offtape.report.judge.LimitSet;

/**
 * What figures are judged by.
 *
 * @param limits what they are held against, or null
 * @param economics what the owner says of money, or null
 */
record Judgement(LimitSet limits, Economics economics) {}
