package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.math.RoundingMode;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.papermath.quantity.Kinds;
import org.papermath.testing.CheckValues;

/** Costs, prices and counts that textbooks print, to the coin. */
class CostingCheckValuesTest {
    private static final class Given {
        private final Map<String, String> cells = new HashMap<>();

        Given(String text) {
            Arrays.stream(text.split(";")).map(String::strip).forEach(one -> {
                int sign = one.indexOf('=');
                cells.put(one.substring(0, sign), one.substring(sign + 1));
            });
        }

        String text(String name) {
            return Objects.requireNonNull(cells.get(name), name);
        }

        Money money(String name) {
            return Money.of(text(name));
        }

        int count(String name) {
            return Integer.parseInt(text(name));
        }

        /** The overhead of the hours used: that of a month over its hours, and what comes with each hour besides. */
        Money overhead() {
            var used = Kinds.TIME.read(text("used"));
            MoneyRate<Time> month = Overhead.perMonth("month", money("month"), Kinds.TIME.of(1, "h"))
                    .rate()
                    .orElseThrow();
            assertThat(month.money()).isEqualByComparingTo(money("month").amount());
            Money fixed =
                    MoneyRate.of(money("month"), Kinds.TIME.read(text("hours"))).costOf(used);
            return fixed.plus(MoneyRate.read(Kinds.TIME, text("besides")).costOf(used));
        }

        Money job() {
            return money("materials").plus(money("labour")).plus(overhead());
        }

        Profit profit() {
            return Profit.read(text("profit"));
        }
    }

    private static String answer(String ask, Given given) {
        return switch (ask) {
            case "overhead rate" -> given.overhead().toString();
            case "job price" -> given.profit().priceOf(given.job()).toString();
            case "unit cost" ->
                given.job()
                        .dividedBy(given.count("count"), RoundingMode.UNNECESSARY)
                        .toString();
            case "unit price" ->
                given.profit()
                        .priceOf(given.job().dividedBy(given.count("count"), RoundingMode.UNNECESSARY))
                        .toString();
            case "share on shares" -> {
                Money before = given.money("prime").plus(given.money("overhead"));
                yield given.profit()
                        .priceOf(Profit.read(given.text("office")).priceOf(before))
                        .toString();
            }
            case "break-even" ->
                String.valueOf(Pricing.breakEven(given.money("fixed"), given.money("price"), given.money("variable")));
            case "studio sheet" -> {
                MoneyRate<Mass> fibre = MoneyRate.read(Kinds.MASS, given.text("fibreRate"));
                Money before = fibre.costOf(Kinds.MASS.read(given.text("fibre")))
                        .plus(given.money("additives"))
                        .plus(given.money("water"))
                        .plus(MoneyRate.read(Kinds.TIME, given.text("handRate"))
                                .costOf(Kinds.TIME.read(given.text("hands"))));
                Money all = Profit.read(given.text("office")).priceOf(before);
                assertThat(all.amount().setScale(0, RoundingMode.HALF_UP)).hasToString("727");
                yield all.dividedBy(given.count("good"), RoundingMode.HALF_UP).toString();
            }
            default -> throw new AssertionError(ask);
        };
    }

    @TestFactory
    List<DynamicTest> toTheCoin() {
        return CheckValues.read("costing").stream()
                .map(row -> dynamicTest(
                        row.toString(),
                        () -> assertThat(answer(row.text("ask"), new Given(row.text("given"))))
                                .isEqualTo(row.text("expected"))))
                .toList();
    }
}
