/** Texts that others wrote, made harmless for whatever shows them. */
package offtape.core.text;
