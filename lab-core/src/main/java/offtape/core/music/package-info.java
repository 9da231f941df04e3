/** Music made by rule: sound with the ways of music for trials and tests, nobody's work. */
package offtape.core.music;
