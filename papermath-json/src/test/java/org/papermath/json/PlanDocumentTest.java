package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.order.Studio;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.StepCaution;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;
import org.papermath.schedule.Day;
import org.papermath.schedule.Phase;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class PlanDocumentTest {
    private static final String METRIC = """
            {"format": "papermath/order", "version": "1.0", "name": "two pieces",
             "recipes": [{"name": "plain", "furnish": [{"fibre": "abaca", "share": "100 %"}], "beating": "2 h",
                          "additives": [{"name": "chalk", "purpose": "carbonate", "dose": "3 %"}]}],
             "studio": {"name": "s", "beater": {"name": "b", "trough": "56.78117676 L", "ratedLoad": "907.18474 g"},
                        "vat": {"name": "v", "volume": "75.70823568 L", "temperature": "20 Cel"},
                        "moulds": [{"name": "m", "opening": ["304.8 mm", "457.2 mm"]}],
                        "press": {"name": "p", "jack": "177.92886460 kN", "platen": ["457.2 mm", "609.6 mm"]},
                        "felts": {"size": ["406.4 mm", "558.8 mm"], "grammage": "500 g/m2", "count": 30},
                        "dryers": [{"kind": "boards", "name": "d", "capacity": 30}],
                        "scaleStep": "1 g"},
             "pieces": [{"name": "card", "count": 40, "recipe": "plain", "size": ["127 mm", "177.8 mm"],
                         "grammage": "GRAMMAGE", "trim": "6.35 mm"}]}
            """;

    private static MakingPlan plan(String text) {
        OrderDocument order = PapermathDocuments.readOrder(text).value();
        return MakingPlan.of(order.order(), order.studio());
    }

    private static JsonNode parsed(MakingPlan plan) {
        return JsonMapper.builder().build().readTree(PapermathDocuments.writePlan(plan, "a test", "3.1"));
    }

    private static void sameForecast(JsonNode node, Estimate<?> estimate, String unit) {
        for (Map.Entry<String, Double> each : Map.of(
                        "likely",
                        estimate.likely().value(),
                        "low",
                        estimate.low().value(),
                        "high",
                        estimate.high().value())
                .entrySet()) {
            String[] written = node.get(each.getKey()).asString().split(" ", 2);
            assertThat(written.length == 1 ? "" : written[1]).isEqualTo(unit);
            assertThat(Double.parseDouble(written[0])).isCloseTo(each.getValue(), withinPercentage(1e-9));
        }
    }

    @Test
    void aPlanHoldsWhatItWasMadeFrom() {
        Document<OrderDocument> read = Concert.read();
        MakingPlan plan = MakingPlan.of(read.value().order(), read.value().studio());
        JsonNode json = parsed(plan);

        assertThat(json.get("format").asString()).isEqualTo("papermath/plan");
        assertThat(json.get("writtenBy").get("program").asString()).isEqualTo("a test");
        assertThat(json.get("writtenBy").get("version").asString()).isEqualTo("3.1");
        assertThat(json.get("edition").asString()).isEqualTo("2026-11");
        String studio = json.get("studio")
                .toString()
                .replaceFirst("\\{", "{\"format\": \"papermath/studio\", \"version\": \"1.0\",");
        assertThat(PapermathDocuments.readStudio(studio).value())
                .isEqualTo(read.value().studio());
        String order = json.get("order")
                .toString()
                .replaceFirst(
                        "\\{",
                        "{\"format\": \"papermath/order\", \"version\": \"1.0\", \"studio\": {\"ref\": \"studio.json\"},");
        assertThat(PapermathDocuments.readOrder(order, Concert.FILES).value().order())
                .isEqualTo(read.value().order());
    }

    @Test
    void aPlanOfShapesIsReadAndMadeAgain() {
        OrderDocument shaped = PapermathDocuments.readOrder(
                        Concert.ORDER
                                .replaceFirst(
                                        "\"pieces\": \\[",
                                        "\"pieces\": " + Concert.SHAPES.strip().replaceFirst("]$", ","))
                                .replace("\"asListed\": true,", ""),
                        Concert.FILES)
                .value();
        String written = PapermathDocuments.writePlan(MakingPlan.of(shaped.order(), shaped.studio()), "a test", "3.1");
        assertThat(written).contains("\"shaped\"", "\"insideWidthDried\"", "\"round\": \"70 mm\"");
        PlanDocument again = PapermathDocuments.readPlan(written).value();
        assertThat(new OrderDocument(again.order(), again.studio())).isEqualTo(shaped);
        assertThat(PapermathDocuments.writePlan(MakingPlan.of(again.order(), again.studio()), "a test", "3.1"))
                .isEqualTo(written);
    }

    @Test
    void aPlanIsReadAsWhatItWasMadeFromAndMadeAgain() {
        OrderDocument first = Concert.read().value();
        String written = PapermathDocuments.writePlan(MakingPlan.of(first.order(), first.studio()), "a test", "3.1");
        PlanDocument again = PapermathDocuments.readPlan(written).value();
        assertThat(new OrderDocument(again.order(), again.studio())).isEqualTo(first);
        assertThat(PapermathDocuments.writePlan(MakingPlan.of(again.order(), again.studio()), "a test", "3.1"))
                .isEqualTo(written);
        DocumentException fault = catchThrowableOfType(
                DocumentException.class,
                () -> PapermathDocuments.readPlan(written.replace(
                                "\"edition\": \"2026-11\",\n  \"order\"", "\"edition\": \"1990-01\",\n  \"order\"")
                        .replace("\"toBuy\"", "\"tobuy\"")));
        assertThat(fault.faults()).extracting(Fault::pointer).containsExactly("/edition", "/tobuy");
    }

    @Test
    void aPlanGivesItsFiguresBackAndComesOutTheSame() {
        OrderDocument first = Concert.read().value();
        MakingPlan plan = MakingPlan.of(first.order(), first.studio());
        Document<PlanDocument> read = PapermathDocuments.readPlan(PapermathDocuments.writePlan(plan, "a test", "3.1"));
        assertThat(read.value().figures())
                .hasSizeGreaterThan(500)
                .containsEntry("/batches/0/recipe", "reed")
                .containsEntry(
                        "/pieces/0/counts/sheets",
                        String.valueOf(plan.pieces().get(0).counts().sheets()));
        assertThat(read.value().moved()).isEmpty();
        assertThat(read.writtenBy()).contains(new WrittenBy("a test", "3.1"));
    }

    @Test
    void aPlanIsWrittenAsItWasRead() {
        String written = PapermathDocuments.writePlan(plan(METRIC.replace("GRAMMAGE", "200 g/m2")), "a test", "3.1")
                .replaceFirst("\"sheets\": ([0-9]+)", "\"sheets\": 1$1,\n        \"x-own\": {\"seen\": true}");
        Document<PlanDocument> read = PapermathDocuments.readPlan(written);
        assertThat(read.keptMembers()).containsOnlyKeys("/pieces/0/counts/x-own");
        String again = PapermathDocuments.writePlan(read);
        assertThat(again.replaceAll("\\s+", "")).isEqualTo(written.replaceAll("\\s+", ""));
        assertThat(read.value().moved())
                .extracting(PlanDocument.Moved::pointer)
                .containsExactly("/pieces/0/counts/sheets");
        assertThat(read.value().moved().get(0).before())
                .isEqualTo("1" + read.value().moved().get(0).after());
    }

    private static PlanDocument writtenAndRead(String text) {
        return PapermathDocuments.readPlan(PapermathDocuments.writePlan(plan(text), "a test", "3.1"))
                .value();
    }

    @Test
    void withOtherValuesItSaysWhatMoved() {
        String text = METRIC.replace("GRAMMAGE", "200 g/m2");
        PlanDocument then = writtenAndRead(text);
        MakingPlan now = plan(text.replace("\"scaleStep\": \"1 g\"", """
                "scaleStep": "1 g", "assumptions": [{"id": "shrinkage.limit", "fibre": "abaca", "value": "2 %",
                "low": "1 %", "high": "3 %", "basis": "measured here", "source": "ten marked sheets"}]"""));
        List<PlanDocument.Moved> moved = then.moved(now);
        assertThat(moved)
                .extracting(PlanDocument.Moved::pointer)
                .contains("/batches/0/freeShrinkage/likely", "/pieces/0/forming/fibre")
                .doesNotContain("/batches/0/recipe", "/pieces/0/counts/ordered");
        PlanDocument.Moved one = moved.stream()
                .filter(m -> m.pointer().equals("/batches/0/freeShrinkage/likely"))
                .findFirst()
                .orElseThrow();
        assertThat(one.before()).isEqualTo(then.figures().get(one.pointer())).endsWith(" %");
        assertThat(one.after()).endsWith(" %").isNotEqualTo(one.before());
    }

    @Test
    void whatOnlyStandsElsewhereHasNotMoved() {
        String text = METRIC.replace("GRAMMAGE", "200 g/m2");
        PlanDocument then = writtenAndRead(text);
        // A value of one's own that is the one of the table changes no figure.
        MakingPlan now = plan(text.replace("\"scaleStep\": \"1 g\"", """
                "scaleStep": "1 g", "assumptions": [{"id": "order.spare-share", "value": "SPARE", "source": "as before"},
                {"id": "order.spare-share", "subject": "nobody", "value": "1 %"}]""".replace(
                        "SPARE",
                        Units.number(Assumptions.standard()
                                .get("order.spare-share", Scope.GENERAL)
                                .likely()))));
        List<PlanDocument.Moved> moved = then.moved(now);
        // Only a notice is new, of the value nobody uses; it stands before others.
        assertThat(moved)
                .hasSize(3)
                .extracting(PlanDocument.Moved::pointer)
                .allMatch(pointer -> pointer.matches("/notices/[0-9]+/[a-z]+"));
        assertThat(moved).extracting(PlanDocument.Moved::before).containsOnly("");
        assertThat(moved).extracting(PlanDocument.Moved::after).contains("assumption.stranger");
    }

    @Test
    void anEditionThatIsNotTheStudiosIsRefused() {
        String written = PapermathDocuments.writePlan(plan(METRIC.replace("GRAMMAGE", "200 g/m2")), "a test", "3.1");
        assertThat(catchThrowableOfType(
                        IllegalArgumentException.class,
                        () -> PapermathDocuments.writePlan(
                                Document.of(PapermathDocuments.readPlan(written).value()))))
                .hasMessageContaining("writtenBy");
    }

    @Test
    void aPlanHoldsItsSettingsAndForecasts() {
        Document<OrderDocument> read = Concert.read();
        MakingPlan plan = MakingPlan.of(read.value().order(), read.value().studio());
        JsonNode json = parsed(plan);

        BatchPlan batch = plan.batches().get(0);
        JsonNode batchJson = json.get("batches").get(0);
        assertThat(batchJson.get("recipe").asString()).isEqualTo("reed");
        assertThat(Kinds.MASS
                        .read(batchJson.get("fibre").get("ovenDry").asString())
                        .isWithin(batch.fibre().ovenDry(), 1e-11))
                .isTrue();
        assertThat(batchJson.get("fibre").get("asBought").asString()).matches("[0-9]+ g");
        assertThat(batchJson.get("fibre").get("kinds"))
                .hasSize(batch.fibre().kinds().size());
        assertThat(batchJson.get("additives")).hasSize(7);
        assertThat(batchJson.get("balances")).hasSize(batch.balances().size());
        sameForecast(batchJson.get("drainability"), batch.drainability(), "SR");

        for (int i = 0; i < plan.pieces().size(); i++) {
            PiecePlan piece = plan.pieces().get(i);
            JsonNode one = json.get("pieces").get(i);
            assertThat(one.get("name").asString()).isEqualTo(piece.name());
            assertThat(one.get("counts").get("sheets").asInt())
                    .isEqualTo(piece.counts().sheets());
            sameForecast(one.get("finished").get("grammage"), piece.finished().grammage(), "g/m2");
            sameForecast(one.get("counts").get("good"), piece.counts().good(), "");
            assertThat(one.get("vat").get("recharges"))
                    .hasSize(piece.vat().recharges().size());
        }
        assertThat(json.get("notices")).hasSize(plan.notices().size());
        assertThat(json.get("toBuy")).hasSize(plan.toBuy().size());
        assertThat(json.get("schedule").get("steps"))
                .hasSize(plan.schedule().steps().size());
        assertThat(json.get("sensitivity")).hasSize(plan.sensitivity().size());
        assertThat(json.get("assumptionsUsed")).hasSize(plan.assumptionsUsed().size());
        assertThat(json.get("assumptionsUsed").get(0).propertyNames())
                .containsExactlyInAnyOrder("key", "value", "low", "high", "basis", "source");
    }

    @Test
    void aStageThatIsNotDoneSaysWhy() {
        OrderDocument order = PapermathDocuments.readOrder(METRIC.replace("GRAMMAGE", "200 g/m2"))
                .value();
        Studio bare = Studio.of("bare").build();
        JsonNode piece =
                parsed(MakingPlan.of(order.order(), bare)).get("pieces").get(0);
        for (String stage : List.of("press", "drying", "sizing", "envelope", "mailed", "vat")) {
            JsonNode why = piece.get(stage).get("notDone");
            assertThat(why.get("code").asString()).as(stage).isNotBlank();
            assertThat(why.get("reason").asString()).as(stage).isNotBlank();
        }
        assertThat(piece.get("pour").get("stock").asString()).matches("[0-9.]+ L");
    }

    @Test
    void eachCautionStandsWithItsStepOnce() {
        MakingPlan plan = plan(METRIC.replace("GRAMMAGE", "200 g/m2"));
        JsonNode cautions = parsed(plan).get("cautions");
        assertThat(cautions).hasSize(plan.cautions().size()).isNotEmpty();
        Set<String> codes = new TreeSet<>();
        for (int i = 0; i < plan.cautions().size(); i++) {
            StepCaution one = plan.cautions().get(i);
            JsonNode json = cautions.get(i);
            assertThat(json.propertyNames()).containsExactlyInAnyOrder("code", "step", "text", "basis");
            assertThat(json.get("code").asString()).isEqualTo(CommonMembers.word(one.code()));
            assertThat(json.get("step").asString()).isEqualTo(CommonMembers.word(one.step()));
            assertThat(json.get("text").asString()).isEqualTo(one.text());
            assertThat(codes.add(json.get("code").asString())).as(one.text()).isTrue();
        }
        assertThat(codes).contains("press", "lifting mould", "drain");
    }

    @Test
    void eachDayStandsWithItsWork() {
        OrderDocument concert = Concert.read().value();
        MakingPlan plan = MakingPlan.of(concert.order(), concert.studio());
        JsonNode calendar = parsed(plan).get("schedule").get("calendar");
        List<Day> days = plan.schedule().calendar();
        assertThat(calendar).hasSize(days.size()).hasSizeGreaterThan(5);
        double hands = 0;
        for (int d = 0; d < days.size(); d++) {
            JsonNode day = calendar.get(d);
            assertThat(day.get("date").asString()).isEqualTo(days.get(d).date().toString());
            hands += Kinds.TIME.read(day.get("hands").asString()).in("min");
            for (int i = 0; i < days.get(d).entries().size(); i++) {
                Day.Entry entry = days.get(d).entries().get(i);
                JsonNode one = day.get("work").get(i);
                assertThat(one.get("what").asString()).isEqualTo(entry.task().name());
                assertThat(one.get("kind").asString()).isIn("hands on", "machine", "waiting");
                LocalDateTime from = LocalDateTime.parse(one.get("from").asString());
                LocalDateTime to = LocalDateTime.parse(one.get("to").asString());
                assertThat(from.toLocalDate()).isEqualTo(days.get(d).date());
                assertThat(from).isBefore(to);
                assertThat(one.has("overnight")).isEqualTo(entry.isOvernight());
                assertThat(one.get("holds").size())
                        .isEqualTo(entry.phase().held().size());
            }
        }
        // The hands of all days are those of all tasks, begun minutes counted as whole ones.
        long tasks = plan.schedule().timetable().tasks().stream()
                .flatMap(task -> task.task().phases().stream())
                .filter(phase -> phase.kind() == Phase.Kind.HANDS_ON)
                .mapToLong(phase -> phase.likely().orElseThrow().plusSeconds(59).toMinutes())
                .sum();
        assertThat(hands).isCloseTo(tasks, within(1e-6 * tasks));
        assertThat(calendar.get(0).get("date").asString())
                .isEqualTo(plan.schedule().start().orElseThrow().toString());
        // Without a date no day can be said.
        MakingPlan undated = plan(METRIC.replace("GRAMMAGE", "200 g/m2"));
        assertThat(undated.order().due()).isEmpty();
        assertThat(parsed(undated).get("schedule").has("calendar")).isFalse();
    }

    @Test
    void daysNobodyKnowsAreLeftOutAndTheOthersAreCounted() {
        OrderDocument order = PapermathDocuments.readOrder(METRIC.replace("GRAMMAGE", "200 g/m2"))
                .value();
        MakingPlan plan = MakingPlan.of(order.order(), Studio.of("bare").build());
        JsonNode schedule = parsed(plan).get("schedule");
        assertThat(schedule.has("days")).isFalse();
        assertThat(schedule.get("leastDays").asInt()).isEqualTo(plan.schedule().leastDays());
        int counted = 0;
        for (JsonNode step : schedule.get("steps")) {
            assertThat(step.has("days"))
                    .as(step.get("name").asString())
                    .isEqualTo(!step.get("name").asString().startsWith("dry"));
            counted += step.has("days") ? step.get("days").asInt() : 0;
        }
        // Some steps go on at the same time.
        assertThat(counted).isGreaterThanOrEqualTo(plan.schedule().leastDays());
        MakingPlan having = plan(METRIC.replace("GRAMMAGE", "200 g/m2"));
        JsonNode known = parsed(having).get("schedule");
        assertThat(known.has("leastDays")).isFalse();
        assertThat(known.get("days").asInt()).isEqualTo(having.schedule().days().orElseThrow());
    }

    @Test
    void theSamePlanIsWrittenTheSame() {
        String text = METRIC.replace("GRAMMAGE", "200 g/m2");
        assertThat(PapermathDocuments.writePlan(plan(text), "a", "1"))
                .isEqualTo(PapermathDocuments.writePlan(plan(text), "a", "1"));
    }

    @Test
    void poundsAndInchesGiveTheSamePlanAsGramsAndMillimetres() {
        double gsm = 110 * 0.45359237 * 1000 / 500 / (26 * 40 * 0.0254 * 0.0254);
        JsonNode metric = parsed(plan(METRIC.replace("GRAMMAGE", Units.number(gsm) + " g/m2")));
        String customary = METRIC.replace(
                        "\"GRAMMAGE\"", "{\"weight\": \"110 lb\", \"sheet\": [\"26 in\", \"40 in\"], \"count\": 500}")
                .replace("56.78117676 L", "15 gal_us")
                .replace("907.18474 g", "2 lb")
                .replace("75.70823568 L", "20 gal_us")
                .replace("20 Cel", "68 degF")
                .replace("304.8 mm", "12 in")
                .replace("457.2 mm", "18 in")
                .replace("177.92886460 kN", "20 tonf_us")
                .replace("609.6 mm", "24 in")
                .replace("406.4 mm", "16 in")
                .replace("558.8 mm", "22 in")
                .replace("127 mm", "5 in")
                .replace("177.8 mm", "7 in")
                .replace("6.35 mm", "0.25 in");
        JsonNode inches = parsed(plan(customary));
        Map<String, String> first = new TreeMap<>();
        Map<String, String> second = new TreeMap<>();
        for (String figures : List.of("batches", "pieces", "toBuy", "schedule", "workingHours", "assumptionsUsed")) {
            flatten(figures, metric.get(figures), first);
            flatten(figures, inches.get(figures), second);
        }
        assertThat(second.keySet()).isEqualTo(first.keySet());
        assertThat(first).hasSizeGreaterThan(300);
        first.forEach((pointer, text) -> same(pointer, text, second.get(pointer)));
    }

    private static void same(String pointer, String metric, String customary) {
        String[] one = metric.split(" ", 2);
        String[] other = customary.split(" ", 2);
        if (!one[0].matches("-?[0-9.]+(e-?[0-9]+)?") || one.length == 2 && one[1].contains(" ")) {
            assertThat(customary).as(pointer).isEqualTo(metric);
            return;
        }
        assertThat(other.length == 2 ? other[1] : "").as(pointer).isEqualTo(one.length == 2 ? one[1] : "");
        double value = Kinds.NUMBER.read(one[0]).value();
        assertThat(Kinds.NUMBER.read(other[0]).value())
                .as(pointer)
                .isCloseTo(value, within(1e-9 * Math.max(1e-3, Math.abs(value))));
    }

    private static void flatten(String pointer, JsonNode node, Map<String, String> into) {
        if (node.isObject()) {
            node.propertyNames().forEach(name -> flatten(pointer + "/" + name, node.get(name), into));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                flatten(pointer + "/" + i, node.get(i), into);
            }
        } else {
            into.put(pointer, node.asString());
        }
    }
}
