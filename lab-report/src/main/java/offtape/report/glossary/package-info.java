/** Words of the trade in plain ones; the words lie beside as resources, a file a language. */
package offtape.report.glossary;
