package sledwright.rules;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks the examples of one rule; the method bears the rule's name and returns {@link Examples}. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface ForRule {

    /** The rule's identifier. */
    String value();
}
