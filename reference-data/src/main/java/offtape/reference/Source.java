package offtape.reference;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Names the published source of the figures that a check holds the software against, such as
 * {@code @Source("IEC 60386, weighting table")}. A figure of the trade without a source is named
 * {@code "common practice, no source"}.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.TYPE, ElementType.METHOD})
public @interface Source {

    /** Standard or publication, with clause, table or page where there is one. */
    String[] value();
}
