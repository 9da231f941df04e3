/** Music made by rule: sound with the ways of music for trials and the demo, nobody's work. */
package offtape.core.music;
