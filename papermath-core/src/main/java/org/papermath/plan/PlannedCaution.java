package org.papermath.plan;

/** A caution with its figure. */
record PlannedCaution(Caution code, WorkStep step, String text, String basis) implements StepCaution {
    @Override
    public String toString() {
        return step.words() + ": " + text;
    }
}
