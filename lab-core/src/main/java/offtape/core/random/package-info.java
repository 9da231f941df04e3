/** Random numbers found by their place, and normal ones that are the same on every Java. */
package offtape.core.random;
