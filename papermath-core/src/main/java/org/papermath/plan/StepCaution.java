package org.papermath.plan;

/**
 * A caution of a plan, beside the step it belongs to and with the figure of the plan where there is one.
 *
 * @param code the caution
 * @param step the step of the work it stands beside
 * @param text what can hurt and what to do, in one or two short lines
 * @param basis the rule or practice behind it
 */
public record StepCaution(Caution code, WorkStep step, String text, String basis) {
    @Override
    public String toString() {
        return step.words() + ": " + text;
    }
}
