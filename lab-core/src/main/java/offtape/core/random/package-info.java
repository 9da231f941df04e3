/** Random numbers that are found by their place, for sound that is made in stretches. */
package offtape.core.random;
