/** What is known of a transport's parts, and the rates at which they turn. */
package offtape.core.transport;
