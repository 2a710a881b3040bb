package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.papermath.air.Air;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

class OrderRoundTripPropertyTest {
    @Provide
    Arbitrary<Recipe> recipes() {
        Arbitrary<List<Fibre>> fibres =
                Arbitraries.of(Fibres.all()).list().ofSize(2).uniqueElements();
        return Combinators.combine(
                        fibres,
                        Arbitraries.doubles().between(1, 99),
                        Arbitraries.doubles().between(0.1, 20),
                        Arbitraries.of("1", "%"))
                .as((two, share, hours, unit) -> Recipe.of(
                                "paper",
                                Furnish.of(
                                        Kinds.SHARE.ofSi(share / 100, unit),
                                        two.get(0),
                                        Share.percent(100 - share),
                                        two.get(1)))
                        .beating(Kinds.TIME.of(hours, "h"))
                        .additive(
                                Additive.of("size", Additive.Purpose.INTERNAL_SIZE)
                                        .active(Kinds.SHARE.ofSi(share / 100, unit)),
                                Kinds.DOSE.of(1, "g/kg"))
                        .build());
    }

    @Provide
    Arbitrary<Piece> pieces() {
        Arbitrary<String> units = Arbitraries.of("mm", "cm", "in");
        Arbitrary<Double> sides = Arbitraries.doubles().between(0.02, 4.9);
        Arbitrary<String> names = Arbitraries.strings()
                .alpha()
                .withChars("åß紙\"\\ ")
                .ofMinLength(1)
                .ofMaxLength(20)
                .map(name -> "p" + name.strip());
        return Combinators.combine(
                        names,
                        sides,
                        sides,
                        units,
                        Arbitraries.doubles().between(3, 1900),
                        Arbitraries.integers().between(1, 100_000),
                        Arbitraries.integers().between(0, 4))
                .as((name, width, height, unit, gsm, count, folds) -> Piece.of(name, count, "paper")
                        .size(Kinds.LENGTH.ofSi(width, unit), Kinds.LENGTH.ofSi(height, unit))
                        .grammage(Grammage.gsm(gsm))
                        .folds(folds)
                        .build());
    }

    @Provide
    Arbitrary<Studio> studios() {
        Arbitrary<Double> numbers = Arbitraries.doubles().between(0.6, 110);
        Arbitrary<Double> fractions = Arbitraries.doubles().between(0, 1);
        return Combinators.combine(numbers, numbers, numbers, numbers, fractions, fractions)
                .as((gallons, pounds, tons, side, part, other) -> Studio.of("s")
                        .beater(Beater.of("b", Kinds.VOLUME.of(gallons, "gal_us"), Kinds.MASS.of(pounds, "lb")))
                        .vat(Vat.of("v", Kinds.VOLUME.of(pounds, "gal_uk"))
                                .at(Kinds.TEMPERATURE.of(60 + 60 * part, "degF")))
                        .mould(Mould.of(
                                "m",
                                Deckle.of(Kinds.LENGTH.of(side, "in"), Kinds.LENGTH.of(side / 7, "ft"))
                                        .split(1, 2, Kinds.LENGTH.of(side * other / 20, "in"))))
                        .press(Press.of(
                                        "p",
                                        Kinds.FORCE.of(tons, "tonf_us"),
                                        Kinds.LENGTH.of(side, "in"),
                                        Kinds.LENGTH.of(side, "cm"))
                                .daylight(Kinds.LENGTH.of(gallons, "in")))
                        .room(Air.of(
                                        Kinds.TEMPERATURE.of(40 + 60 * other, "degF"),
                                        Kinds.RELATIVE_HUMIDITY.ofSi(0.05 + 0.9 * part, "%"))
                                .at(Kinds.AIR_PRESSURE.ofSi(60_000 + 45_000 * part, "bar")))
                        .onHand(Fibres.ABACA, Kinds.MASS.of(pounds, "oz"))
                        .build());
    }

    /** What is written reads back to the same order, and is written the same again. */
    @Property(tries = 300, seed = "20270122")
    void anOrderSurvivesWritingAndReading(
            @ForAll("recipes") Recipe recipe, @ForAll("pieces") Piece piece, @ForAll("studios") Studio studio) {
        Order order = Order.of("o")
                .recipe(recipe)
                .piece(piece)
                .due(LocalDate.of(2027, 1, 22))
                .build();
        String written = PapermathDocuments.writeOrder(Document.of(new OrderDocument(order, studio)));
        OrderDocument read = PapermathDocuments.readOrder(written).value();

        assertThat(read).isEqualTo(new OrderDocument(order, studio));
        assertThat(PapermathDocuments.writeOrder(Document.of(read))).isEqualTo(written);
    }
}
