/**
 * Where results go: files and folders that appear whole or not at all, and never in the place of
 * something the user made. Stands alone; whoever writes builds on it.
 */
package offtape.core.output;
