/** Filters: designed for a wanted magnitude, and sound passed through them. */
package offtape.core.filter;
