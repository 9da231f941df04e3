package offtape.cli.command;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import offtape.report.apply.listen.ListenFacts;

/**
 * What {@code listen --json} prints.
 *
 * @param facts all that is known of the page
 * @param pageBytes its size
 * @param next what to do with it
 */
record ListenOutput(@JsonUnwrapped ListenFacts facts, long pageBytes, String next) {}
