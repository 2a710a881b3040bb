package org.papermath.examples.questions;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks a method that answers a question of a papermaker. What is asked is the first sentence of its comment. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Question {
    /** {@return its number: B for a question of the trade, F for a caution, G for what a studio asks besides} */
    String number();

    /** {@return further words of the trade it is found by, with blanks between them} */
    String words();
}
