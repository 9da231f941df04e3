/** What a tape that was recorded elsewhere holds, as its owner describes it. */
package offtape.core.tape;
