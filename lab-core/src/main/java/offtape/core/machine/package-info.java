/** The simulated tape machine whose truth is known. */
package offtape.core.machine;
