package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.fibre.FibreProperty;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** The table of numbers shipped with the library. */
class AssumptionsTableTest {
    private static final Assumptions TABLE = Assumptions.standard();

    @Test
    void everyRowSaysHowItIsKnownAndWhereItIsFrom() {
        assertThat(TABLE.all()).hasSizeGreaterThan(400).allSatisfy(row -> {
            assertThat(row.source().text()).hasSizeGreaterThan(10);
            assertThat(row.meaning()).hasSizeGreaterThan(10);
            assertThat(row.basis()).isNotIn(Basis.MEASURED_HERE, Basis.GIVEN);
        });
    }

    @Test
    void theSourceAgreesWithHowTheValueIsKnown() {
        assertThat(TABLE.all()).allSatisfy(row -> {
            String source = row.source().text();
            switch (row.basis()) {
                case RECALLED -> assertThat(source).contains("recalled");
                case COMMON_PRACTICE -> assertThat(source).containsAnyOf("no source", "derived here");
                case ANCHORED ->
                    assertThat(source)
                            .as(row.key())
                            .containsAnyOf("; one ", "; two sheets", "; single statements")
                            .doesNotContain("recalled", "no source");
                case PUBLISHED, STANDARD -> assertThat(source).doesNotContain("recalled", "no source");
                default -> assertThat(row.basis()).isEqualTo(Basis.DEFINITION);
            }
        });
    }

    @Test
    void sharesStayInsideZeroAndOneAndFactorsAboveZero() {
        assertThat(TABLE.all()).allSatisfy(row -> {
            switch (row.shape()) {
                case LOGIT -> {
                    assertThat(row.low()).isPositive();
                    assertThat(row.high()).isLessThan(1);
                    assertThat(row.least()).isZero();
                    assertThat(row.most()).isEqualTo(1);
                }
                case LOG_NORMAL -> assertThat(row.least()).isNotNegative();
                default -> assertThat(row.shape()).isEqualTo(Shape.NORMAL);
            }
        });
    }

    @Test
    void everyRowOfOneIdIsOfOneUnitRoleAndMeaning() {
        Set<String> ids = TABLE.all().stream().map(Assumption::id).collect(Collectors.toSet());
        Set<String> kinds = TABLE.all().stream()
                .map(row -> row.id() + "/" + row.unit() + "/" + row.role() + "/" + row.meaning())
                .collect(Collectors.toSet());
        assertThat(kinds).hasSameSizeAs(ids);
    }

    @Test
    void everyPropertyOfAFibreIsAnIdOfTheTable() {
        assertThat(TABLE.all().stream().map(Assumption::id))
                .contains(Arrays.stream(FibreProperty.values())
                        .map(FibreProperty::id)
                        .toArray(String[]::new));
    }

    @Test
    void everyIdTheCodeAsksForIsInTheTable() throws IOException {
        Set<String> ids = TABLE.all().stream().map(Assumption::id).collect(Collectors.toSet());
        Pattern asked = Pattern.compile(
                "(?:(?<!Codes\\.)\\b(?:find|get|si|amount|given|days|limit|applyAsDouble)|slots\\.of|int \\w+ = of\\w*)"
                        + "\\(\\s*\"([a-z]+\\.[a-z-]+)\"");
        List<Path> files;
        try (Stream<Path> tree = Files.walk(Path.of("src", "main", "java"))) {
            files = tree.filter(file -> file.toString().endsWith(".java")).toList();
        }
        assertThat(files).isNotEmpty();
        for (Path file : files) {
            Matcher matcher = asked.matcher(Files.readString(file));
            while (matcher.find()) {
                assertThat(ids).as(file.getFileName() + " asks for it").contains(matcher.group(1));
            }
        }
    }

    @Test
    void everyPurposeOfAnAdditiveHasARetentionWithAndWithoutAid() {
        for (Additive.Purpose purpose : Additive.Purpose.values()) {
            Scope subject = Scope.of(purpose.subject());
            Assumption without = TABLE.get("additive.retention", subject);
            Assumption with = TABLE.get("additive.retention", subject.on("with aid"));
            assertThat(with.likely()).isGreaterThanOrEqualTo(without.likely());
            assertThat(with.likely() > without.likely())
                    .as(purpose + " is held better with an aid")
                    .isEqualTo(purpose.isParticle() || purpose == Additive.Purpose.INTERNAL_SIZE);
        }
    }

    @Test
    void findsFromTheNarrowestOutwards() {
        Scope flax = Scope.of("flax-raw", "flax", "linen").on("big beater");
        assertThat(TABLE.get("beating.exponent", flax).scope()).isEqualTo(Scope.of("flax-raw"));
        assertThat(TABLE.get("sheet.density-unbeaten", flax).scope()).isEqualTo(Scope.of("flax"));
        assertThat(TABLE.get("beater.consistency", flax).scope()).isEqualTo(Scope.GENERAL);
        Assumptions own = TABLE.given("beating.rate", flax, 0.2);
        assertThat(own.get("beating.rate", flax).likely()).isEqualTo(0.2);
        assertThat(own.get("beating.rate", Scope.of("flax-raw")).likely()).isEqualTo(0.18);
        assertThatThrownBy(() -> TABLE.get("sheet.density-unbeaten", Scope.of("kozo")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("has to be measured");
    }

    @Test
    void convertsToCoherentUnits() {
        assertThat(TABLE.si("beating.rate", Scope.of("linter"))).isEqualTo(0.55 / 3600);
        assertThat(TABLE.si("sheet.density-reference-pressure", Scope.GENERAL)).isEqualTo(0.4e6);
        assertThat(TABLE.si("fibre.coarseness", Scope.of("abaca"))).isEqualTo(0.185e-6);
        assertThat(TABLE.amount("press.pressure-warning", Scope.GENERAL, Kinds.SHEET_PRESSURE)
                        .in("MPa"))
                .isEqualTo(1.5);
    }

    @Test
    void theTwoReferencePressuresAgree() {
        assertThat(TABLE.si("press.reference-pressure", Scope.GENERAL))
                .isEqualTo(TABLE.si("sheet.density-reference-pressure", Scope.GENERAL));
    }

    @Test
    void cautionsRiseWithHumidityAndLimitsWithPressure() {
        assertThat(List.of(
                        TABLE.si("room.mould-note", Scope.GENERAL),
                        TABLE.si("room.mould-caution", Scope.GENERAL),
                        TABLE.si("room.mould-stop", Scope.GENERAL)))
                .isSorted()
                .doesNotHaveDuplicates();
        assertThat(TABLE.si("press.pressure-warning", Scope.GENERAL))
                .isLessThan(TABLE.si("press.pressure-limit", Scope.GENERAL));
        assertThat(TABLE.si("beater.consistency-warning", Scope.GENERAL))
                .isLessThan(TABLE.si("beater.consistency-limit", Scope.GENERAL));
    }
}
