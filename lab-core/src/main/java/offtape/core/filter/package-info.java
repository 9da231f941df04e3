/** Sound passed through filters that are given by their impulse response. */
package offtape.core.filter;
