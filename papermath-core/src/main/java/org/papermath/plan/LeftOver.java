package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.papermath.engine.Account;
import org.papermath.fibre.Fibre;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.quantity.Amount;

/**
 * What a making leaves, at the likely values: stuff from vat and pails, broke and trim, fibre still on the shelf, good pieces
 * beyond those ordered; and the studio as it then stands. Made by {@link MakingPlan#leaves}. Immutable.
 */
public final class LeftOver {
    private static final List<Account> BROKE = List.of(
            Account.TRIALS,
            Account.REJECTED_FORMING,
            Account.REJECTED_PRESSING,
            Account.REJECTED_DRYING,
            Account.REJECTED_SIZING,
            Account.TRIM,
            Account.REJECTED_CUTTING,
            Account.REJECTED_FOLDING);

    private final Studio studio;
    private final List<StuffOnHand> stuff;
    private final Map<String, Amount<Mass>> broke;
    private final Map<Fibre, Amount<Mass>> fibre;
    private final Map<String, Integer> pieces;

    private LeftOver(
            Studio studio,
            List<StuffOnHand> stuff,
            Map<String, Amount<Mass>> broke,
            Map<Fibre, Amount<Mass>> fibre,
            Map<String, Integer> pieces) {
        this.studio = studio;
        this.stuff = List.copyOf(stuff);
        this.broke = Collections.unmodifiableMap(broke);
        this.fibre = Collections.unmodifiableMap(fibre);
        this.pieces = Collections.unmodifiableMap(pieces);
    }

    static LeftOver of(PlainNumbers in, MakingPlan plan, LocalDate day) {
        Map<String, StuffOnHand> there = new LinkedHashMap<>();
        in.studio().stuffOnHand().forEach(one -> there.put(one.recipe(), one));
        Map<Fibre, Double> fibre = new LinkedHashMap<>();
        in.studio().onHand().forEach((kind, mass) -> fibre.put(kind, mass.si()));
        Map<String, Amount<Mass>> broke = new LinkedHashMap<>();
        for (int b = 0; b < plan.batches().size(); b++) {
            BatchPlan batch = plan.batches().get(b);
            Optional<StuffOnHand> before = Optional.ofNullable(there.remove(batch.name()));
            double old = before.map(one -> one.ovenDry().si()).orElse(0.0)
                    - batch.stuffOnHand().si();
            Map<Account, Double> out = in.accounts().fibre(b).out();
            double left = Math.max(0, old)
                    + out.getOrDefault(Account.IN_VAT, 0.0)
                    + Math.max(0, out.getOrDefault(Account.STOCK_LEFT, 0.0));
            if (left > 0) {
                LocalDate made = before.flatMap(StuffOnHand::made)
                        .filter(then -> then.isBefore(day) && old > 0)
                        .orElse(day);
                there.put(
                        batch.name(),
                        new StuffOnHand(
                                batch.name(),
                                PlainNumbers.grams(left),
                                batch.stock().consistency(),
                                Optional.of(made)));
            }
            double spoiled = 0;
            for (Account one : BROKE) {
                spoiled += out.getOrDefault(one, 0.0);
            }
            broke.put(batch.name(), PlainNumbers.grams(spoiled));
            batch.fibre()
                    .kinds()
                    .forEach(line -> fibre.computeIfPresent(
                            line.fibre(), (kind, mass) -> mass - line.fromHand().si()));
        }
        Studio.Builder after = in.studio().toBuilder();
        List<StuffOnHand> stuff = new ArrayList<>(there.values());
        Map<Fibre, Amount<Mass>> shelf = new LinkedHashMap<>();
        fibre.forEach((kind, mass) -> {
            if (mass > 1e-6) {
                shelf.put(kind, PlainNumbers.grams(mass));
            }
        });
        Map<String, Integer> pieces = new LinkedHashMap<>();
        for (PiecePlan piece : plan.pieces()) {
            int good = (int) Math.floor(piece.counts().good().likely().si() + 1e-9);
            pieces.put(piece.name(), Math.max(0, good - piece.counts().ordered()));
        }
        return new LeftOver(after.holding(shelf, stuff).build(), stuff, broke, shelf, pieces);
    }

    /** {@return the stuff, of each recipe, at the consistency of its stock: what was kept is strained to it} */
    public List<StuffOnHand> stuff() {
        return stuff;
    }

    /** {@return broke and trim, oven-dry fibre by recipe; {@link StuffOnHand#ofBroke} takes it into the next making} */
    public Map<String, Amount<Mass>> broke() {
        return broke;
    }

    /** {@return fibre on the shelf, oven-dry} */
    public Map<Fibre, Amount<Mass>> fibre() {
        return fibre;
    }

    /** {@return good pieces beyond those ordered, by piece} */
    public Map<String, Integer> pieces() {
        return pieces;
    }

    /** {@return the studio with what is left on its shelves, but for broke and pieces} */
    public Studio studio() {
        return studio;
    }

    @Override
    public String toString() {
        return "stuff " + stuff + "; broke " + broke + "; fibre " + fibre + "; pieces " + pieces;
    }
}
