/** Returned sound put back in time and level with what was sent. */
package offtape.core.align;
