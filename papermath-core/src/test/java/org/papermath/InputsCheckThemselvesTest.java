package org.papermath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.drying.DryingModel;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.mould.Opening;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveSolution;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** A record in public can be made by its constructor, past every named way of making it. */
class InputsCheckThemselvesTest {
    private static Arguments given(ThrowingCallable constructor, String said) {
        return Arguments.of(constructor, said);
    }

    static Stream<Arguments> whatCannotBe() {
        return Stream.of(
                given(() -> new Opening(mm(0), mm(100)), "width of the opening: 0 mm given"),
                given(() -> new Opening(mm(100), mm(0)), "height of the opening: 0 mm given"),
                given(
                        () -> new AdditiveSolution(
                                Additive.of("rosin size", Additive.Purpose.INTERNAL_SIZE),
                                Kinds.SOLUTION_STRENGTH.of(5, "g/L"),
                                Kinds.VOLUME.of(0, "L")),
                        "volume of the solution: 0 L given"),
                given(() -> new DryingModel.Ready(0, hours(1)), "sheets of the post: 0 given"),
                given(() -> new Estimate.Driver(any(), 1.5), "in a band: 1.5 given; must be from 0 to 1"),
                given(() -> new Estimate.Driver(any(), Double.NaN), "in a band: NaN given; must be from 0 to 1"));
    }

    private static Assumption any() {
        return Assumptions.standard().find("press.factor", Scope.GENERAL).orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("whatCannotBe")
    void isRefusedByTheConstructorToo(ThrowingCallable constructor, String said) {
        assertThatThrownBy(constructor).isInstanceOf(Refused.class).hasMessageContaining(said);
    }

    @Test
    void aListGivenIsCopied() {
        List<String> ids = new ArrayList<>(List.of("press.factor"));
        Bands.Use use = new Bands.Use(Scope.GENERAL, ids);
        ids.add("press.exponent");
        assertThat(use.ids()).containsExactly("press.factor");
    }
}
