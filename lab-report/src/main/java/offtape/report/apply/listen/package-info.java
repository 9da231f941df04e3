/**
 * Two sounds made alike in time and level, and the page on which they are told apart blindly. The
 * page's own scripts lie beside this package's classes as resources.
 */
package offtape.report.apply.listen;
