/** Published tables, schemas and recorded motion, with the source of each, and their reader. */
package offtape.reference;
