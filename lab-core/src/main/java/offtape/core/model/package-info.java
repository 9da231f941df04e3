/** A measured machine as running sound: its curve, its filters, its motion, its noise. */
package offtape.core.model;
