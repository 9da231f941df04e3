/** Returned sound put back in time with what was sent. */
package offtape.core.align;
