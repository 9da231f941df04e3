/** The ways an input or output can be refused, in words for the user. */
package offtape.core.fault;
