package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.air.Water;
import org.papermath.drying.Dryer;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.FibreProperty;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.MailPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PieceCounts;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** The lines of a costing, worked out in the order of the groups. */
final class Costs {
    /** Accounts of a balance that one sheet more would not change. */
    private static final Set<String> FIXED = Set.of("trial sheets", "kept in the vat", "stock put by");
    /** Accounts of water that do not go down the drain. */
    private static final Set<String> NOT_DRAINED = Set.of("evaporated", "in the dry paper", "stock put by");

    record FoundLine(Costing.Group group, String what, String amount, Money cost, Money fixed, Money variable)
            implements Costing.Line {
        @Override
        public String toString() {
            return what + (amount.isEmpty() ? "" : ", " + amount) + ": " + cost;
        }
    }

    record FoundGap(String what, String needs) implements Costing.Gap {
        @Override
        public String toString() {
            return what + " has no price: " + needs;
        }
    }

    record FoundBand(Money likely, Money low, Money high) implements Costing.Band {
        @Override
        public String toString() {
            return likely
                    + (low.equals(high)
                            ? ""
                            : ", " + low.amount().toPlainString() + "–"
                                    + high.amount().toPlainString());
        }
    }

    record FoundPiece(
            String name,
            Costing.Band cost,
            Costing.Band fixed,
            Costing.Band variable,
            int sheets,
            int sold,
            Money inSold,
            Money inSpares,
            Money inRejects,
            Money perSheetFormed,
            Costing.Band perGoodPiece,
            Costing.Band perPieceSold,
            Money variablePerPiece)
            implements Costing.OfPiece {
        @Override
        public String toString() {
            return name + ": " + cost + "; " + perPieceSold + " each of " + sold;
        }
    }

    /** A line with its parts by piece; what is only of pieces sold stands apart from what is of all that are formed. */
    private record Booked(FoundLine line, List<Money> fixed, List<Money> formed, List<Money> sold) {
        /** Fixed, then of what is formed, then of what is sold. */
        List<List<Money>> parts() {
            return List.of(fixed, formed, sold);
        }
    }

    /** How far a cost may be off, as money below and above, and how much of that is fixed. */
    private record Reach(double below, double above, double fixed) {
        Reach times(double share) {
            return new Reach(below * share, above * share, fixed);
        }
    }

    private final MakingPlan plan;
    private final PriceList prices;
    private final boolean handsOnPieces;
    private final Money nothing;
    private final List<Booked> booked = new ArrayList<>();
    private final List<Costing.Gap> gaps = new ArrayList<>();
    private final Set<Notice> notices = new LinkedHashSet<>();
    private final List<Costing.OfPiece> pieces = new ArrayList<>();
    /** Of each piece, its part of the fibre of its batch. */
    private final double[] ofBatch;
    /** Of each piece, its batch. */
    private final int[] batchOf;
    /** Of each batch, the part of its fibre that is fixed. */
    private final double[] fixedOfBatch;
    /** Hands on each piece, its part of the batch with it, s. */
    private final double[] handsOf;
    /** Of the hands on each piece, the part that is fixed. */
    private final double[] fixedHands;

    private final Costing.Band cost;
    private final Costing.Band fixed;
    private final Costing.Band variable;

    Costs(MakingPlan plan, PriceList prices, boolean handsOnPieces) {
        this.plan = plan;
        this.prices = prices;
        this.handsOnPieces = handsOnPieces;
        nothing = Money.zero(prices.currency());
        int n = plan.pieces().size();
        List<String> batches = plan.batches().stream().map(BatchPlan::name).toList();
        batchOf = plan.pieces().stream()
                .mapToInt(piece -> batches.indexOf(piece.batch()))
                .toArray();
        double[] inBatch = new double[batches.size()];
        double[] fibre = new double[n];
        for (int p = 0; p < n; p++) {
            PiecePlan piece = plan.pieces().get(p);
            fibre[p] = piece.forming().fibre().si() * piece.counts().sheets();
            inBatch[batchOf[p]] += fibre[p];
        }
        ofBatch = IntStream.range(0, n)
                .mapToDouble(p -> fibre[p] / inBatch[batchOf[p]])
                .toArray();
        fixedOfBatch = plan.batches().stream()
                .mapToDouble(batch -> fixedPart(batch, "fibre"))
                .toArray();
        handsOf = new double[n];
        fixedHands = new double[n];
        fibre();
        additives();
        size();
        water();
        energy();
        hours();
        wear();
        postage();
        ownLines();
        overheads();
        booked.sort(Comparator.comparing(one -> one.line.group()));
        PlannedHours.Span whole = handsOnPieces ? PlannedHours.hands(plan) : ofBatchesOnly();
        Reach hands = handsReach(whole, handsMoney(true), handsMoney(false));
        Reach dryers = dryingReach(p -> true);
        cost = band(total(FoundLine::cost), List.of(hands, dryers));
        fixed = band(total(FoundLine::fixed), List.of(hands.times(hands.fixed), dryers.times(dryers.fixed)));
        variable =
                band(total(FoundLine::variable), List.of(hands.times(1 - hands.fixed), dryers.times(1 - dryers.fixed)));
        for (int p = 0; p < n; p++) {
            pieces.add(piece(p));
        }
    }

    List<Costing.Line> lines() {
        return booked.stream().<Costing.Line>map(Booked::line).toList();
    }

    List<Costing.Gap> gaps() {
        return List.copyOf(gaps);
    }

    List<Notice> notices() {
        return List.copyOf(notices);
    }

    List<Costing.OfPiece> pieces() {
        return List.copyOf(pieces);
    }

    Costing.Band cost() {
        return cost;
    }

    Costing.Band fixed() {
        return fixed;
    }

    Costing.Band variable() {
        return variable;
    }

    private Money total(Function<FoundLine, Money> part) {
        return booked.stream().map(one -> part.apply(one.line)).reduce(nothing, Money::plus);
    }

    // ---------------------------------------------------------------------------------------------------- booking

    private void gap(String what, String needs) {
        gaps.add(new FoundGap(what, needs));
    }

    private double trials(int p) {
        PieceCounts counts = plan.pieces().get(p).counts();
        return (double) counts.trials() / counts.sheets();
    }

    /** The part of a substance of a batch that goes where one sheet more would not change it. */
    private static double fixedPart(BatchPlan batch, String substance) {
        for (Balance balance : batch.balances()) {
            if (balance.substance().equals(substance) && balance.totalIn().si() > 0) {
                double part = balance.out().entrySet().stream()
                        .filter(one -> FIXED.contains(one.getKey()))
                        .mapToDouble(one -> Math.max(0, one.getValue().si()))
                        .sum();
                return Math.min(1, part / balance.totalIn().si());
            }
        }
        return 0;
    }

    /** Books a line of what is formed, shared by weights, of each share so much fixed. */
    private void book(Costing.Group group, String what, String amount, Money money, double[] weights, double[] fixed) {
        List<Money> shares = shares(money, weights);
        List<Money> fixedShares = new ArrayList<>();
        List<Money> formed = new ArrayList<>();
        for (int p = 0; p < shares.size(); p++) {
            Money part = shares.get(p).times(Decimals.of(fixed[p]), RoundingMode.HALF_UP);
            fixedShares.add(part);
            formed.add(shares.get(p).minus(part));
        }
        List<Money> sold = shares.stream().map(one -> nothing).toList();
        add(group, what, amount, fixedShares, formed, sold);
    }

    private List<Money> shares(Money money, double[] weights) {
        List<BigDecimal> parts = IntStream.range(0, weights.length)
                .mapToObj(p -> Decimals.of(weights[p]))
                .toList();
        return parts.stream().allMatch(one -> one.signum() == 0) ? money.split(weights.length) : money.allocate(parts);
    }

    private void add(
            Costing.Group group,
            String what,
            String amount,
            List<Money> fixedShares,
            List<Money> formed,
            List<Money> sold) {
        Money fixedSum = sum(fixedShares);
        Money variableSum = sum(formed).plus(sum(sold));
        booked.add(new Booked(
                new FoundLine(group, what, amount, fixedSum.plus(variableSum), fixedSum, variableSum),
                fixedShares,
                formed,
                sold));
    }

    private Money sum(List<Money> parts) {
        return parts.stream().reduce(nothing, Money::plus);
    }

    private double[] filled(double value) {
        return plan.pieces().stream().mapToDouble(one -> value).toArray();
    }

    /** Amounts of the batches given to their pieces by the fibre in these. */
    private double[] toPieces(double[] ofBatches) {
        return IntStream.range(0, batchOf.length)
                .mapToDouble(p -> ofBatches[batchOf[p]] * ofBatch[p])
                .toArray();
    }

    private double[] fixedByBatch() {
        return IntStream.range(0, batchOf.length)
                .mapToDouble(p -> fixedOfBatch[batchOf[p]])
                .toArray();
    }

    private static double sum(double[] parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        return sum;
    }

    /** Books a material, or tells that it has no price. */
    private void material(
            Costing.Group group,
            String what,
            double[] kilograms,
            Optional<MoneyRate<Mass>> price,
            double[] fixedOfBatches) {
        Amount<Mass> mass = Kinds.MASS.ofSi(sum(kilograms), "g");
        if (!(mass.si() > 0)) {
            return;
        }
        if (price.isEmpty()) {
            gap(what, mass + " of it is needed. Add its price per kg or per pack.");
            return;
        }
        double[] fixedParts = IntStream.range(0, batchOf.length)
                .mapToDouble(p -> fixedOfBatches[batchOf[p]])
                .toArray();
        book(group, what, bought(price.get(), mass), price.get().costOf(mass), toPieces(kilograms), fixedParts);
    }

    private static <Q extends Quantity<Q>> String bought(MoneyRate<Q> price, Amount<Q> amount) {
        if (!price.isInWholePacks()) {
            return amount + " at " + price;
        }
        long packs = price.packs(amount);
        return amount + " of " + packs + (packs == 1 ? " pack" : " packs") + " at " + price;
    }

    // --------------------------------------------------------------------------------------------------- materials

    private void fibre() {
        Map<String, double[]> masses = new LinkedHashMap<>();
        Map<String, Optional<MoneyRate<Mass>>> found = new LinkedHashMap<>();
        int batches = plan.batches().size();
        for (int b = 0; b < batches; b++) {
            BatchPlan batch = plan.batches().get(b);
            for (FibreToWeigh.Line line : batch.fibre().kinds()) {
                String what = line.form().of(line.fibre());
                double moisture = FibreProperty.MOISTURE_AS_BOUGHT
                        .of(line.fibre(), line.form(), plan.studio().assumptions())
                        .likelySi();
                double taken = Moisture.massAtWetBasis(line.fromHand().si(), moisture);
                masses.computeIfAbsent(what, k -> new double[batches])[b] +=
                        line.asBought().si() + taken;
                found.put(what, prices.fibre(line.fibre(), line.form()));
            }
            if (batch.stuffOnHand().si() > 0) {
                gap(
                        "stuff of " + batch.name() + " on hand",
                        batch.stuffOnHand() + " of oven-dry fibre stands beaten, from a batch whose cost this list does"
                                + " not know. Add what it cost as a line of your own.");
            }
        }
        masses.forEach((what, mass) ->
                material(Costing.Group.FIBRE, what, mass, found.getOrDefault(what, Optional.empty()), fixedOfBatch));
    }

    private void additives() {
        int batches = plan.batches().size();
        Map<String, double[]> masses = new LinkedHashMap<>();
        Map<Alkali, double[]> alkalis = new LinkedHashMap<>();
        Map<String, double[]> fixedParts = new LinkedHashMap<>();
        for (int b = 0; b < batches; b++) {
            BatchPlan batch = plan.batches().get(b);
            for (CookingPlan.Pot pot : batch.cooking().map(CookingPlan::pots).orElse(List.of())) {
                alkalis.computeIfAbsent(pot.alkali(), k -> new double[batches])[b] +=
                        pot.pureAlkali().si();
            }
            for (AdditiveToWeigh additive : batch.additives()) {
                String name = additive.additive().name();
                masses.computeIfAbsent(name, k -> new double[batches])[b] +=
                        additive.productInAll().si();
                fixedParts.computeIfAbsent(name, k -> new double[batches])[b] = fixedPart(batch, name);
            }
        }
        alkalis.forEach((alkali, mass) -> material(
                Costing.Group.ADDITIVES,
                alkali.toString(),
                mass,
                Optional.ofNullable(prices.alkalis().get(alkali)),
                fixedOfBatch));
        masses.forEach((name, mass) -> material(
                Costing.Group.ADDITIVES,
                name,
                mass,
                Optional.ofNullable(prices.additives().get(name)),
                fixedParts.getOrDefault(name, fixedOfBatch)));
    }

    private void size() {
        double[] masses = plan.pieces().stream()
                .mapToDouble(piece ->
                        piece.sizingStage().map(bath -> bath.drySize().si()).orElse(0.0))
                .toArray();
        Amount<Mass> all = Kinds.MASS.ofSi(sum(masses), "g");
        if (all.si() > 0) {
            prices.size()
                    .ifPresentOrElse(
                            price -> book(
                                    Costing.Group.SIZE,
                                    "dry size for the bath",
                                    bought(price, all),
                                    price.costOf(all),
                                    masses,
                                    filled(0)),
                            () -> gap("dry size for the bath", all + " of it is needed. Add its price per kg."));
        }
    }

    private void water() {
        int batches = plan.batches().size();
        double[] in = new double[batches];
        double[] out = new double[batches];
        for (int b = 0; b < batches; b++) {
            BatchPlan batch = plan.batches().get(b);
            double liquor = batch.cooking().map(CookingPlan::pots).orElse(List.of()).stream()
                    .mapToDouble(pot -> pot.liquor().si())
                    .sum();
            double density = Water.room().density().si();
            for (Balance balance : batch.balances()) {
                if (balance.substance().equals("water")) {
                    in[b] = balance.totalIn().si() / density;
                    out[b] = balance.out().entrySet().stream()
                                    .filter(one -> !NOT_DRAINED.contains(one.getKey()))
                                    .mapToDouble(
                                            one -> Math.max(0, one.getValue().si()))
                                    .sum()
                            / density;
                }
            }
            in[b] += liquor;
            out[b] += liquor;
        }
        volume("water", in, prices.water());
        volume("drain", out, prices.drain());
    }

    private void volume(String what, double[] cubicMetres, Optional<MoneyRate<Volume>> price) {
        Amount<Volume> all = Kinds.VOLUME.ofSi(sum(cubicMetres), "L");
        if (!(all.si() > 0)) {
            return;
        }
        price.ifPresentOrElse(
                rate -> book(
                        Costing.Group.WATER,
                        what,
                        bought(rate, all),
                        rate.costOf(all),
                        toPieces(cubicMetres),
                        fixedByBatch()),
                () -> gap(what, all + " of it. Add its price per m3, also where it is 0."));
    }

    // ---------------------------------------------------------------------------------------------- current and hours

    private void energy() {
        double[] roll =
                plan.batches().stream().mapToDouble(PlannedHours::machine).toArray();
        Optional<Amount<Energy>> beaten = energy("beater", sum(roll), prices.beaterPower());
        beaten.ifPresent(all -> prices.energy()
                .ifPresent(rate -> book(
                        Costing.Group.ENERGY,
                        "current of the beater",
                        bought(rate, all),
                        rate.costOf(all),
                        toPieces(roll),
                        fixedByBatch())));
        double[] dry =
                IntStream.range(0, batchOf.length).mapToDouble(this::fanTime).toArray();
        Optional<Amount<Energy>> dried = energy("dryer", sum(dry), prices.dryerPower());
        dried.ifPresent(all -> prices.energy()
                .ifPresent(rate -> book(
                        Costing.Group.ENERGY,
                        "current of the dryer",
                        bought(rate, all),
                        rate.costOf(all),
                        dry,
                        IntStream.range(0, batchOf.length)
                                .mapToDouble(this::trials)
                                .toArray())));
    }

    private Optional<Amount<Energy>> energy(String machine, double seconds, Optional<Amount<Power>> power) {
        if (!(seconds > 0)) {
            return Optional.empty();
        }
        String runs = "it runs " + Kinds.TIME.ofSi(seconds, "h");
        if (power.isEmpty()) {
            gap("current of the " + machine, runs + ". Add its power to the list.");
            return Optional.empty();
        }
        Amount<Energy> all = Kinds.ENERGY.ofSi(power.get().si() * seconds, "kW.h");
        if (prices.energy().isEmpty()) {
            gap("current of the " + machine, runs + ", " + all + ". Add the price of current per kW.h.");
        }
        return Optional.of(all);
    }

    /** How long a fan or heater runs for a piece, s. */
    private double fanTime(int p) {
        return plan.pieces()
                .get(p)
                .dryingStage()
                .optional()
                .filter(drying -> drying.dryer() instanceof Dryer.FanStack stack && stack.hasFan())
                .map(drying -> drying.loads() * drying.left().si())
                .orElse(0.0);
    }

    private void hours() {
        int n = batchOf.length;
        PlannedHours.Span[] batches =
                plan.batches().stream().map(PlannedHours::hands).toArray(PlannedHours.Span[]::new);
        double cleaning = prices.cleaning().map(Amount::si).orElse(0.0);
        double[] ofBatches = new double[n];
        double[] ofPieces = new double[n];
        double[] cleans = new double[n];
        double[] onSteps = new double[n];
        double ordered = plan.pieces().stream()
                .mapToDouble(piece -> piece.counts().ordered())
                .sum();
        for (int p = 0; p < n; p++) {
            ofBatches[p] = batches[batchOf[p]].likely() * ofBatch[p];
            ofPieces[p] =
                    handsOnPieces ? PlannedHours.hands(plan.pieces().get(p)).likely() : 0;
            cleans[p] = cleaning * ofBatch[p];
            onSteps[p] = PlannedHours.own(plan) * plan.pieces().get(p).counts().ordered() / ordered;
            handsOf[p] = ofBatches[p] + ofPieces[p] + cleans[p] + onSteps[p];
            fixedHands[p] = handsOf[p] > 0
                    ? (cleans[p] + onSteps[p] + ofBatches[p] * fixedOfBatch[batchOf[p]] + ofPieces[p] * trials(p))
                            / handsOf[p]
                    : 0;
        }
        time("hands on the batches", ofBatches, prices.hands(), fixedByBatch());
        time(
                "hands on the pieces",
                ofPieces,
                prices.hands(),
                IntStream.range(0, n).mapToDouble(this::trials).toArray());
        time("setting up and cleaning", cleans, prices.hands(), filled(1));
        time("hands on steps of your own", onSteps, prices.hands(), filled(1));
        double[] roll =
                plan.batches().stream().mapToDouble(PlannedHours::machine).toArray();
        time("hours of the beater", toPieces(roll), prices.machine(), fixedByBatch());
    }

    private void time(String what, double[] seconds, Optional<MoneyRate<Time>> rate, double[] fixedParts) {
        Amount<Time> all = Kinds.TIME.ofSi(sum(seconds), "h");
        if (!(all.si() > 0)) {
            return;
        }
        rate.ifPresentOrElse(
                price -> book(Costing.Group.HOURS, what, bought(price, all), price.costOf(all), seconds, fixedParts),
                () -> gap(what, all + ". Add the rate of an hour, also where it is 0."));
    }

    // ------------------------------------------------------------------------------------------- wear and own lines

    private void wear() {
        int n = batchOf.length;
        int[] felts = new int[n];
        int[] blotters = new int[n];
        for (int p = 0; p < n; p++) {
            PiecePlan piece = plan.pieces().get(p);
            int times = piece.pressStage().map(press -> press.times()).orElse(0);
            felts[p] = piece.postsStage()
                    .map(posts -> posts.posts() * posts.felts() * times)
                    .orElse(0);
            blotters[p] = piece.dryingStage()
                    .optional()
                    .filter(drying -> drying.dryer() instanceof Dryer.Blotters)
                    .map(drying -> blotters(drying, piece.counts().sheets()))
                    .orElse(0);
        }
        worn("felts", "pressings of a felt", felts, prices.felt());
        worn("blotters", "blotters laid", blotters, prices.blotter());
    }

    /** One blotter more than layers in each filling, and all of them anew at each change. */
    private static int blotters(DryingPlan drying, int sheets) {
        int layers = (sheets + drying.inLayer() - 1) / drying.inLayer();
        return (layers + drying.loads()) * (1 + drying.blotterChanges());
    }

    private void worn(String what, String words, int[] uses, Optional<Wear> wear) {
        int all = IntStream.of(uses).sum();
        if (all == 0) {
            return;
        }
        String times = all + " " + words;
        wear.ifPresentOrElse(
                one -> book(
                        Costing.Group.WEAR,
                        what,
                        times + " at " + one,
                        one.costOf(all),
                        IntStream.of(uses).mapToDouble(i -> i).toArray(),
                        IntStream.range(0, batchOf.length)
                                .mapToDouble(this::trials)
                                .toArray()),
                () -> gap(what, times + ". Add what one costs and how many uses it lasts, also where it is 0."));
    }

    private void requirePiece(Optional<String> only, String line) {
        only.ifPresent(name -> {
            if (plan.pieces().stream().noneMatch(piece -> piece.name().equals(name))) {
                throw Refused.of(
                        "price.no-piece",
                        line + ": it is for " + name + " only, and the order has no piece of that name; it has: "
                                + plan.pieces().stream().map(PiecePlan::name).toList() + ".",
                        "line",
                        line,
                        "given",
                        name);
            }
        });
    }

    // ----------------------------------------------------------------------------------------------------- postage

    private void postage() {
        prices.postage().ifPresent(table -> prices.posted().forEach(one -> posted(table, one)));
    }

    private void posted(PostageTable table, Postage how) {
        requirePiece(how.piece(), "postage");
        LocalDate day = plan.order().due().orElse(prices.date());
        List<Money> none = plan.pieces().stream().map(piece -> nothing).toList();
        List<Money> each = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (PiecePlan piece : plan.pieces()) {
            each.add(
                    how.piece().map(piece.name()::equals).orElse(true)
                            ? posted(table, how, piece, day, words)
                            : nothing);
        }
        if (!words.isEmpty()) {
            add(Costing.Group.POSTAGE, "postage", String.join("; ", words), none, none, each);
        }
    }

    private Money posted(PostageTable table, Postage how, PiecePlan piece, LocalDate day, List<String> words) {
        Optional<MailPlan> mail = piece.mailStage().optional();
        if (how.service().isEmpty() && mail.isEmpty()) {
            return nothing;
        }
        Optional<String> service =
                how.service().or(() -> mail.flatMap(one -> one.verdict().service()));
        if (service.isEmpty()) {
            gap("postage of " + piece.name(), "no service of its country takes it. Say by which it is posted.");
            return nothing;
        }
        table.age(service.get(), day).ifPresent(notices::add);
        double one = mail.map(MailPlan::mass)
                .orElse(piece.finished().mass())
                .likely()
                .si();
        int sold = piece.counts().ordered();
        int full = sold / how.inParcel();
        int rest = sold % how.inParcel();
        Money all = nothing;
        if (full > 0) {
            all = all.plus(asked(table, how, service.get(), one, how.inParcel(), full, day, piece.name(), words));
        }
        if (rest > 0) {
            all = all.plus(asked(table, how, service.get(), one, rest, 1, day, piece.name(), words));
        }
        return all;
    }

    private static Money asked(
            PostageTable table,
            Postage how,
            String service,
            double one,
            int pieces,
            int times,
            LocalDate day,
            String name,
            List<String> words) {
        Amount<Mass> mass = Kinds.MASS.ofSi(pieces * one + how.wrapping().si(), "g");
        Money price = table.price(service, mass, day, how.surcharges());
        words.add(name + ", " + times + " by " + service + " of " + mass + " at " + price);
        return price.times(times);
    }

    private void ownLines() {
        for (OwnLine line : prices.lines()) {
            requirePiece(line.piece(), line.name());
            own(line);
        }
    }

    private void own(OwnLine line) {
        int n = batchOf.length;
        List<Money> none = IntStream.range(0, n).mapToObj(p -> nothing).toList();
        if (line.basis() == OwnLine.Basis.ORDER || line.basis() == OwnLine.Basis.BATCH) {
            boolean once = line.basis() == OwnLine.Basis.ORDER;
            Money all = once ? line.money() : line.money().times(plan.batches().size());
            double[] weights = once
                    ? plan.pieces().stream()
                            .mapToDouble(piece -> piece.counts().ordered())
                            .toArray()
                    : ofBatch;
            add(
                    Costing.Group.OWN,
                    line.name(),
                    line.money() + " " + line.basis().words(),
                    shares(all, weights),
                    none,
                    none);
            return;
        }
        List<Money> each = new ArrayList<>();
        for (PiecePlan piece : plan.pieces()) {
            PieceCounts counts = piece.counts();
            int times = switch (line.basis()) {
                case PIECE -> counts.ordered();
                case PARCEL -> (counts.ordered() + line.inParcel() - 1) / line.inParcel();
                case SHEET -> counts.sheets();
                case ORDER, BATCH -> 0;
            };
            each.add(
                    line.piece().map(piece.name()::equals).orElse(true)
                            ? line.money().times(times)
                            : nothing);
        }
        String words = line.money() + " " + line.basis().words();
        if (line.basis() == OwnLine.Basis.SHEET) {
            double[] weights =
                    each.stream().mapToDouble(one -> one.amount().doubleValue()).toArray();
            double[] fixedParts =
                    IntStream.range(0, n).mapToDouble(this::trials).toArray();
            book(Costing.Group.OWN, line.name(), words, sum(each), weights, fixedParts);
        } else {
            add(Costing.Group.OWN, line.name(), words, none, none, each);
        }
    }

    // --------------------------------------------------------------------------------------------------- overheads

    private void overheads() {
        Amount<Time> all = Kinds.TIME.ofSi(sum(handsOf), "h");
        List<Booked> before = List.copyOf(booked);
        List<Booked> hourly = new ArrayList<>();
        for (Overhead one : prices.overheads()) {
            one.hourly(plan.studio().workingDay()).ifPresent(rate -> {
                if (all.si() > 0) {
                    book(
                            Costing.Group.OVERHEAD,
                            one.name(),
                            all + " at " + rate,
                            rate.costOf(all),
                            handsOf,
                            fixedHands);
                    hourly.add(booked.get(booked.size() - 1));
                }
            });
        }
        List<Booked> base = new ArrayList<>(before);
        base.addAll(hourly);
        for (Overhead one : prices.overheads()) {
            one.share().ifPresent(share -> onAll(one, share, base));
        }
    }

    private void onAll(Overhead one, Markup share, List<Booked> base) {
        Money sum = base.stream().map(line -> line.line.cost()).reduce(nothing, Money::plus);
        Money added = share.priceOf(sum).minus(sum);
        int n = batchOf.length;
        List<BigDecimal> weights = new ArrayList<>();
        for (int part = 0; part < 3; part++) {
            for (int p = 0; p < n; p++) {
                int of = part;
                int at = p;
                weights.add(base.stream()
                        .map(line -> line.parts().get(of).get(at))
                        .reduce(nothing, Money::plus)
                        .amount());
            }
        }
        if (weights.stream().allMatch(weight -> weight.signum() == 0)) {
            return;
        }
        List<Money> parts = added.allocate(weights);
        add(
                Costing.Group.OVERHEAD,
                one.name(),
                share + ", on " + sum,
                parts.subList(0, n),
                parts.subList(n, 2 * n),
                parts.subList(2 * n, 3 * n));
    }

    // ------------------------------------------------------------------------------------------------------ bands

    /** What hands and what goes by them cost in the whole, before shares on cost; all of it, or what is fixed. */
    private double handsMoney(boolean all) {
        double money = 0;
        for (int p = 0; p < batchOf.length; p++) {
            money += handsOf[p] * (all ? 1 : fixedHands[p]);
        }
        return money * handRate();
    }

    /** What a second of hands costs with the overhead that goes by it. */
    private double handRate() {
        double rate = prices.hands().map(Costs::perSecond).orElse(0.0);
        for (Overhead one : prices.overheads()) {
            rate += one.hourly(plan.studio().workingDay()).map(Costs::perSecond).orElse(0.0);
        }
        return rate * sharesOnCost();
    }

    private double sharesOnCost() {
        double share = 1;
        for (Overhead one : prices.overheads()) {
            share += one.share()
                    .map(Markup::ratio)
                    .map(ratio -> ratio.profit().doubleValue() / ratio.cost().doubleValue())
                    .orElse(0.0);
        }
        return share;
    }

    private static double perSecond(MoneyRate<?> rate) {
        return rate.money().doubleValue() / rate.per().si();
    }

    private Reach handsReach(PlannedHours.Span hours, double money, double fixedMoney) {
        double rate = handRate();
        return new Reach(hours.below() * rate, hours.above() * rate, money > 0 ? fixedMoney / money : 0);
    }

    /** The hands on all batches, taken to be off alike: sheets that others form take no hours of the studio. */
    private PlannedHours.Span ofBatchesOnly() {
        double likely = 0;
        double below = 0;
        double above = 0;
        for (BatchPlan batch : plan.batches()) {
            PlannedHours.Span one = PlannedHours.hands(batch);
            likely += one.likely();
            below += one.below();
            above += one.above();
        }
        return new PlannedHours.Span(likely, below, above);
    }

    /** The current of dryers may be off by what their times are off. */
    private Reach dryingReach(IntPredicate which) {
        double rate = prices.energy().map(Costs::perSecond).orElse(0.0)
                * prices.dryerPower().map(Amount::si).orElse(0.0)
                * sharesOnCost();
        double below = 0;
        double above = 0;
        double fixedTime = 0;
        double time = 0;
        for (int p = 0; p < batchOf.length; p++) {
            double runs = fanTime(p);
            if (which.test(p) && runs > 0) {
                DryingPlan drying = plan.pieces().get(p).drying();
                double left = drying.left().si();
                below += drying.loads()
                        * Math.min(left, Math.max(0, left - drying.time().low().si()));
                above += drying.loads() * Math.max(0, drying.time().high().si() - left);
                time += runs;
                fixedTime += runs * trials(p);
            }
        }
        return new Reach(below * rate, above * rate, time > 0 ? fixedTime / time : 0);
    }

    private Costing.Band band(Money likely, List<Reach> reaches) {
        double below = Math.sqrt(
                reaches.stream().mapToDouble(one -> one.below * one.below).sum());
        double above = Math.sqrt(
                reaches.stream().mapToDouble(one -> one.above * one.above).sum());
        Money low = likely.minus(Costing.coin(below, likely));
        return new FoundBand(likely, low.sign() < 0 ? nothing : low, likely.plus(Costing.coin(above, likely)));
    }

    /** A cost over a count, both with a band: their logarithms are added as squares. */
    private Costing.Band over(Costing.Band all, double count, double countBelow, double countAbove) {
        double likely = all.likely().amount().doubleValue();
        Money each = Costing.coin(likely / count, nothing);
        if (!(likely > 0)) {
            return new FoundBand(each, each, each);
        }
        double low = all.low().amount().doubleValue();
        double down = Math.hypot(low > 0 ? Math.log(likely / low) : 0, Math.log(countAbove / count));
        double up = Math.hypot(Math.log(all.high().amount().doubleValue() / likely), Math.log(count / countBelow));
        return new FoundBand(
                each,
                Costing.coin(likely / count * Math.exp(-down), nothing),
                Costing.coin(likely / count * Math.exp(up), nothing));
    }

    // ------------------------------------------------------------------------------------------------------ pieces

    private Costing.OfPiece piece(int p) {
        PiecePlan piece = plan.pieces().get(p);
        PieceCounts counts = piece.counts();
        Money fixedSum = sum(booked.stream().map(one -> one.fixed.get(p)).toList());
        Money formed = sum(booked.stream().map(one -> one.formed.get(p)).toList());
        Money packed = sum(booked.stream().map(one -> one.sold.get(p)).toList());
        Money variableSum = formed.plus(packed);
        PlannedHours.Span own = PlannedHours.hands(piece);
        PlannedHours.Span shared = PlannedHours.hands(plan.batches().get(batchOf[p]));
        double money = handsOf[p] * handRate();
        Reach hands = handsReach(own, money, money * fixedHands[p]).times(handsOnPieces ? 1 : 0);
        Reach batch = handsReach(shared, money, money * fixedHands[p]).times(ofBatch[p]);
        Reach drying = dryingReach(q -> q == p);
        Costing.Band all = band(fixedSum.plus(variableSum), List.of(hands, batch, drying));
        double made = (double) (counts.sheets() - counts.trials()) * counts.perSheet();
        double good = counts.good().likely().si();
        double sold = Math.min(counts.ordered(), good);
        List<Money> went = formed.allocate(List.of(
                Decimals.of(sold), Decimals.of(Math.max(0, good - sold)), Decimals.of(Math.max(0, made - good))));
        double chance = counts.good().scatter().orElse(0.0);
        double fewer = good
                * Math.exp(-Math.hypot(
                        Math.log(good / counts.good().low().si()), chance < 1 ? Math.log1p(chance) : chance));
        double more = Math.min(
                made, good * Math.exp(Math.hypot(Math.log(counts.good().high().si() / good), Math.log1p(chance))));
        return new FoundPiece(
                piece.name(),
                all,
                band(fixedSum, List.of(hands.times(hands.fixed), batch.times(batch.fixed), drying.times(drying.fixed))),
                band(
                        variableSum,
                        List.of(
                                hands.times(1 - hands.fixed),
                                batch.times(1 - batch.fixed),
                                drying.times(1 - drying.fixed))),
                counts.sheets(),
                counts.ordered(),
                went.get(0).plus(packed),
                went.get(1),
                went.get(2),
                all.likely().dividedBy(counts.sheets(), RoundingMode.HALF_UP),
                over(all, good, fewer, Math.max(good, more)),
                over(all, counts.ordered(), counts.ordered(), counts.ordered()),
                variableSum.dividedBy(counts.ordered(), RoundingMode.HALF_UP));
    }
}
