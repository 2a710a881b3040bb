package org.papermath.plan;

/** A caution of a plan, beside the step it belongs to and with the figure of the plan where there is one. */
public sealed interface StepCaution permits PlannedCaution {
    /** {@return the caution} */
    Caution code();

    /** {@return the step of the work it stands beside} */
    WorkStep step();

    /** {@return what can hurt and what to do, in one or two short lines} */
    String text();

    /** {@return the rule or practice behind it} */
    String basis();
}
