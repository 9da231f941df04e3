/** The description of a simulated machine: records that are its JSON file, with their limits. */
package offtape.core.machine.spec;
