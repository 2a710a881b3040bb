package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.papermath.format.ReamBasis;

/** Every code of every kind and every ream, decade by decade. */
class RoundTripTest {
    private static final double[] MANTISSAS = {1, Math.E, Math.PI, 1 / 0.3, 9.99};

    /** How many of the values a kind can have in a code; each is carried to SI and back, and printed and read. */
    private static <Q extends Quantity<Q>> int roundTrips(Kind<Q> kind, String code) {
        int done = 0;
        for (int exponent = -9; exponent <= 6; exponent++) {
            for (double mantissa : MANTISSAS) {
                double value = mantissa * Math.pow(10, exponent);
                double si = kind.toSi(value, kind.unit(code));
                if (!(si >= kind.lowestSi() && si <= kind.highestSi())) {
                    continue;
                }
                Amount<Q> amount = kind.of(value, code);
                double back = kind.ofSi(amount.si(), code).value();
                // A temperature scale takes its digits from the size of its shift.
                double size = Temperature.class.equals(kind.type()) ? 460 + value : value;
                assertThat(Math.abs(back - value) / size)
                        .as(kind.name() + " " + code)
                        .isLessThanOrEqualTo(1e-14);
                Amount<Q> read = kind.read(Units.print(amount));
                assertThat(read).isEqualTo(amount);
                assertThat(Double.doubleToLongBits(read.si())).isEqualTo(Double.doubleToLongBits(amount.si()));
                done++;
            }
        }
        return done;
    }

    @Test
    void everyCodeOfEveryKind() {
        int codes = 0;
        List<String> short12 = new ArrayList<>();
        for (Kind<?> kind : Kinds.all()) {
            for (String code : kind.codes()) {
                codes++;
                int done = roundTrips(kind, code);
                assertThat(done).as(kind.name() + " " + code).isPositive();
                boolean bounded = Double.isFinite(kind.highestSi());
                if (done < 12 * MANTISSAS.length && !bounded) {
                    short12.add(kind.name() + " " + code);
                }
            }
        }
        assertThat(codes).isGreaterThan(100);
        // A kind without an upper bound is carried through twelve decades at the least.
        assertThat(short12).isEmpty();
    }

    @Test
    void everyGradeInEveryCount() {
        for (ReamBasis grade : ReamBasis.grades()) {
            for (int count : new int[] {1, 472, 480, 500, 504, 516, 960, 1000, 4800}) {
                ReamBasis basis = grade.withCount(count);
                double most = basis.poundsOf(Kinds.GRAMMAGE.ofSi(Kinds.GRAMMAGE.highestSi()));
                for (int exponent = 0; exponent < 12; exponent++) {
                    double pounds = most / 3 * Math.pow(10, -exponent);
                    Amount<Grammage> grammage = basis.pounds(pounds);
                    assertThat(basis.poundsOf(grammage.to("g/m2"))).isCloseTo(pounds, relative(pounds, 1e-14));
                    assertThat(grammage.to("g/m2").to(basis.pound()).value())
                            .isCloseTo(pounds, relative(pounds, 1e-14));
                    Amount<Grammage> read = Kinds.GRAMMAGE.read(Units.print(grammage.to("g/m2")));
                    assertThat(basis.poundsOf(read)).isCloseTo(pounds, relative(pounds, 1e-14));
                }
            }
        }
    }
}
