/** Levels, quantities with uncertainty, tape speeds. */
package offtape.core.unit;
