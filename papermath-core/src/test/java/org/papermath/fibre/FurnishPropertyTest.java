package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.assertj.core.data.Offset;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;

class FurnishPropertyTest {
    @Property(seed = "2026")
    void whatIsDividedAddsUpAgain(
            @ForAll @Size(min = 1, max = 17) List<@DoubleRange(min = 0.1, max = 5000) Double> grams,
            @ForAll @DoubleRange(min = 1, max = 50) double kilograms) {
        Map<Fibre, Quantity<Mass>> parts = new LinkedHashMap<>();
        for (int i = 0; i < grams.size(); i++) {
            parts.put(Fibres.all().get(i), Amounts.grams(grams.get(i)));
        }
        Furnish furnish = Furnish.ofMasses(parts);
        assertThat(furnish.shares().values().stream().mapToDouble(Amount::si).sum())
                .isCloseTo(1, Offset.offset(1e-12));
        assertThat(furnish.masses(Amounts.kilograms(kilograms)).values().stream()
                        .mapToDouble(Amount::si)
                        .sum())
                .isCloseTo(kilograms, Offset.offset(1e-9 * kilograms));
        assertThat(Furnish.of(furnish.shares()).fibres()).containsExactlyInAnyOrderElementsOf(furnish.fibres());
    }
}
