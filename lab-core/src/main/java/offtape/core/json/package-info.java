/** JSON that people write by hand, read strictly and refused in words that name the place. */
package offtape.core.json;
