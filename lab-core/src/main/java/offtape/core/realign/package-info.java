/** A returned track put back in time with its original, by the sound alone. */
package offtape.core.realign;
