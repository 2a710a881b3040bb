package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.papermath.order.OwnStep;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Amounts;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Steps of one's own in the document of an order and of its plan. */
class OwnStepDocumentTest {
    @Test
    void theyAreReadAndWrittenAsTheyStand() {
        Document<OrderDocument> concert = Concert.read();
        assertThat(concert.value().order().steps())
                .containsExactly(
                        OwnStep.of("bring it")
                                .hands(Amounts.hours(1.5))
                                .waits(Amounts.days(3))
                                .after(OwnStep.Stage.PACK)
                                .build(),
                        OwnStep.of("approve the proof")
                                .waits(Amounts.days(4))
                                .between(Amounts.days(2), Amounts.days(7))
                                .inWorkingDays()
                                .after(OwnStep.Stage.FIBRE)
                                .before(OwnStep.Stage.SOAK)
                                .build());
        String written = PapermathDocuments.writeOrder(concert);
        assertThat(PapermathDocuments.readOrder(written, Concert.FILES).value()).isEqualTo(concert.value());
    }

    @Test
    void aStageThatIsNoneIsAFaultWithTheNearest() {
        DocumentException refused = catchThrowableOfType(
                DocumentException.class,
                () -> PapermathDocuments.readOrder(
                        Concert.ORDER.replace("\"after\": \"pack\"", "\"after\": \"pakc\""), Concert.FILES));
        assertThat(refused.faults()).hasSize(1);
        Fault fault = refused.faults().get(0);
        assertThat(fault.code()).isEqualTo(FaultCodes.CHOICE);
        assertThat(fault.pointer()).isEqualTo("/steps/0/after");
        assertThat(fault.text()).contains("pack");
        assertThat(fault.accepted()).contains("pack", "dry again", "form");
    }

    @Test
    void thePlanSaysWhichStepsOfTheDaysAreOnesOwn() {
        OrderDocument concert = Concert.read().value();
        MakingPlan plan = MakingPlan.of(concert.order(), concert.studio());
        JsonNode steps = JsonMapper.builder()
                .build()
                .readTree(PapermathDocuments.writePlan(plan, "a test", "1"))
                .get("schedule")
                .get("steps");
        int own = 0;
        for (JsonNode step : steps) {
            own += step.path("own").asBoolean(false) ? 1 : 0;
        }
        assertThat(own).isEqualTo(2);
        assertThat(steps.get(steps.size() - 1).get("name").asString()).isEqualTo("bring it");
        assertThat(steps.get(steps.size() - 1).get("own").asBoolean()).isTrue();
    }
}
