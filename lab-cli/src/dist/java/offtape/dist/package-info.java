/** Makes the image that runs without an installed Java; used by the build alone. */
package offtape.dist;
