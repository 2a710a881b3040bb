package org.papermath.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Amount;
import org.papermath.text.Digits;

/** Where the fibre of all batches goes, and what of it is kept for the next. */
final class AccountSection extends CardSection {
    /** What the accounts of a plan are gathered to. */
    private static final List<Map.Entry<String, String>> GATHERED = List.of(
            Map.entry("good", "ordered pieces"),
            Map.entry("spare", "spare pieces"),
            Map.entry("trim", "trim"),
            Map.entry("rejected", "rejects"),
            Map.entry("trial sheets", "trials"),
            Map.entry("kept in the vat", "left in the vat"),
            Map.entry("stock put by", "stock put by"));

    private static final String REST = "handling and water";
    /** What is less than this part of the whole is told with the rest. */
    private static final double TRIFLE = 0.01;
    /** What is less than this part of the stock is not worth a pail. */
    private static final double SPLASH = 0.005;

    AccountSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        Map<String, Double> parts = parts();
        double whole = parts.values().stream().mapToDouble(Double::doubleValue).sum();
        if (whole <= 0) {
            return false;
        }
        form.section(number, Label.FIBRE.words(), "of " + Figures.grams(whole));
        form.line(
                Mark.EXPECT,
                String.join(
                        ", ",
                        parts.entrySet().stream()
                                .map(part -> part.getKey() + " " + Digits.significant(100 * part.getValue() / whole, 2)
                                        + " % (" + Figures.grams(part.getValue()) + ")")
                                .toList()));
        form.picture(new Picture(
                FibreBar.svg(parts), "Where the fibre goes, of " + Figures.grams(whole) + " oven-dry", false));
        for (BatchPlan batch : plan.batches()) {
            String name = plan.batches().size() > 1 ? batch.name() + ": " : "";
            if (batch.keptInVat().likely().si() > 0) {
                row(
                        Mark.SET,
                        Label.KEPT,
                        name + figures.band(batch.keptInVat()) + " of fibre; strain it and put it by");
            }
            row(Mark.EXPECT, Label.PUT_BY, name + putBy(batch));
        }
        List<String> again = Stream.of("trim", "rejects", "trials")
                .filter(parts::containsKey)
                .toList();
        if (!again.isEmpty()) {
            form.line(
                    Mark.SET, String.join(", ", again) + ": dry them, mark them with the recipe, and beat them again");
        }
        cautions(WorkStep.CLEAR_UP);
        return true;
    }

    /** What is planned to be over of the stock of a batch. */
    private String putBy(BatchPlan batch) {
        double splash = SPLASH * batch.stock().mass().si();
        double most = batch.stockPutBy().high().si();
        String over = batch.stockPutBy().likely().si() >= splash
                ? figures.band(batch.stockPutBy())
                : "nothing is planned to be left"
                        + (most < splash ? "" : ", up to " + Figures.two(most) + " kg may be");
        return over
                + batch.shortage()
                        .map(one -> "; it may also run short by up to "
                                + Digits.three(one.upTo().in("kg")) + " kg")
                        .orElse("");
    }

    /** Oven-dry fibre by where it goes, kg, in the order of {@link #GATHERED}; what runs short is no part. */
    private Map<String, Double> parts() {
        Map<String, Double> parts = new LinkedHashMap<>();
        GATHERED.forEach(entry -> parts.put(entry.getValue(), 0.0));
        parts.put(REST, 0.0);
        for (BatchPlan batch : plan.batches()) {
            for (Balance balance : batch.balances()) {
                if (balance.substance().equals("fibre")) {
                    balance.out().forEach((account, mass) -> add(parts, account, mass));
                }
            }
        }
        double whole = parts.values().stream().mapToDouble(Double::doubleValue).sum();
        List<String> small = new ArrayList<>();
        parts.forEach((name, mass) -> {
            if (mass <= TRIFLE * whole && !name.equals(REST)) {
                small.add(name);
            }
        });
        small.forEach(name -> parts.merge(REST, parts.remove(name), Double::sum));
        parts.values().removeIf(mass -> mass <= 0);
        return parts;
    }

    private static void add(Map<String, Double> parts, String account, Amount<Mass> mass) {
        if (mass.si() > 0) {
            String name = GATHERED.stream()
                    .filter(entry -> account.startsWith(entry.getKey()))
                    .map(Map.Entry::getValue)
                    .findFirst()
                    .orElse(REST);
            parts.merge(name, mass.si(), Double::sum);
        }
    }
}
