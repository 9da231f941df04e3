/** Texts that others wrote, made harmless for whatever shows them; our own texts by language. */
package offtape.core.text;
