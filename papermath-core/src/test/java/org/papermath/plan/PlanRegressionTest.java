package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;

/**
 * The figures of two plans as they came out before: own output, so a difference is no error by itself, but a change of
 * numbers that has to be meant. A change needs a line under "Changed numbers" in CHANGELOG.md.
 *
 * <p>To write the table anew, run this test with {@code -Dplan.figures.print=true} and take what it prints.
 */
class PlanRegressionTest {
    private static final String FILE = "/regression/plan_sample.csv";
    private static final double TOLERANCE = 1e-9;

    /** Figures by name; a setting has one number, a forecast its likely, low and high. */
    private final Map<String, double[]> figures = new LinkedHashMap<>();

    @Test
    void figuresAreThoseOfBefore() throws IOException {
        read("sample", MakingPlan.of(Sample.order(), Sample.studio()));
        read("bare", MakingPlan.of(Sample.order(), Sample.bare().build()));
        read("worked", WorkedOrderTest.workedPlan());
        if (Boolean.getBoolean("plan.figures.print")) {
            System.out.print(table());
        }
        Map<String, double[]> before = before();
        assertThat(figures.keySet()).containsExactlyElementsOf(before.keySet());
        before.forEach((name, numbers) -> {
            assertThat(figures.get(name)).as(name).hasSameSizeAs(numbers);
            for (int i = 0; i < numbers.length; i++) {
                assertThat(figures.get(name)[i])
                        .as(name)
                        .isCloseTo(numbers[i], within(TOLERANCE * Math.abs(numbers[i])));
            }
        });
    }

    private static Map<String, double[]> before() throws IOException {
        Map<String, double[]> map = new LinkedHashMap<>();
        try (InputStream in = PlanRegressionTest.class.getResourceAsStream(FILE)) {
            assertThat(in).as(FILE).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            List<String> lines =
                    text.lines().filter(line -> !line.startsWith("#")).skip(1).toList();
            for (String line : lines) {
                String[] cells = line.split(",");
                double[] numbers = new double[cells.length - 1];
                for (int i = 0; i < numbers.length; i++) {
                    numbers[i] = Double.parseDouble(cells[i + 1]);
                }
                map.put(cells[0], numbers);
            }
        }
        return map;
    }

    private String table() {
        List<String> lines = new ArrayList<>(List.of(
                "# source: own output; the plans of Sample (full and bare studio) and of WorkedOrderTest",
                "# known-by: the program itself, so this table only shows that a number has changed",
                "# tolerance: rel 1e-9",
                "# why: another order of the same sums may move the last digits, nothing else",
                "# a change needs a line under \"Changed numbers\" in CHANGELOG.md",
                "# coherent SI; a setting has its value only, a forecast likely, low and high",
                "figure,likely,low,high"));
        figures.forEach((name, numbers) -> {
            StringBuilder line = new StringBuilder(name);
            for (double number : numbers) {
                line.append(',').append(number);
            }
            lines.add(line.toString());
        });
        return String.join("\n", lines) + "\n";
    }

    private void read(String of, MakingPlan plan) {
        for (BatchPlan batch : plan.batches()) {
            batch(of + " / " + batch.name() + " / ", batch);
        }
        for (PiecePlan piece : plan.pieces()) {
            piece(of + " / " + piece.name() + " / ", piece);
        }
        put(of + " / working hours", plan.workingHours());
        put(of + " / calendar days known", plan.schedule().leastDays());
        put(of + " / notices", plan.notices().size());
        put(of + " / assumptions", plan.assumptionsUsed().size());
        plan.sensitivity().stream()
                .limit(5)
                .forEach(one -> put(of + " / weight of " + one.assumption().key(), one.weight()));
    }

    private void batch(String of, BatchPlan batch) {
        put(of + "fibre oven-dry", batch.fibre().ovenDry());
        for (FibreToWeigh.Line line : batch.fibre().kinds()) {
            put(of + line.fibre().name() + " as bought", line.asBought());
        }
        put(of + "soak water", batch.soak().water());
        batch.beatingStage().optional().ifPresent(beating -> {
            put(of + "loads", beating.loads());
            put(of + "oven-dry fibre of a load", beating.runs().get(0).ovenDryEach());
            put(of + "water of a load", beating.runs().get(0).waterEach());
        });
        for (AdditiveToWeigh additive : batch.additives()) {
            put(of + additive.additive().name() + " for a load", additive.productEach());
        }
        put(of + "stock", batch.stock().mass());
        put(of + "stock volume", batch.stock().volume());
        put(of + "stock as made", batch.stock().realConsistency());
        put(of + "drainability", batch.drainability());
        put(of + "water retention", batch.waterRetention());
        put(of + "free shrinkage", batch.freeShrinkage());
        put(of + "kept in the vat", batch.keptInVat());
        put(of + "stock put by", batch.stockPutBy());
        put(of + "white water fibre", batch.whiteWaterFibre());
        put(of + "batch hours", batch.workingHours());
        for (Balance balance : batch.balances()) {
            balance.out().forEach((account, mass) -> put(of + balance.substance() + " " + account, mass));
        }
    }

    private void piece(String of, PiecePlan piece) {
        put(of + "wanted", piece.counts().wanted());
        put(of + "sheets", piece.counts().sheets());
        put(of + "good", piece.counts().good());
        put(of + "pieces up", piece.forming().perSheet());
        put(of + "opening width", piece.forming().opening().width());
        put(of + "opening height", piece.forming().opening().height());
        put(of + "fibre of a sheet", piece.forming().fibre());
        put(of + "solids of a sheet", piece.forming().solids());
        piece.vatStage().optional().ifPresent(vat -> vat(of, vat));
        piece.pourStage().optional().ifPresent(pour -> put(of + "pour", pour.stock()));
        piece.drainTimeStage().optional().ifPresent(time -> put(of + "drain time", time));
        put(of + "wet mat", piece.matThickness());
        put(of + "couched mass", piece.couchedMass());
        piece.postsStage().optional().ifPresent(posts -> {
            put(of + "sheets in a post", posts.sheetsInPost());
            put(of + "posts", posts.posts());
            put(of + "post mass", posts.mass());
            put(of + "post height", posts.height());
        });
        piece.pressStage().optional().ifPresent(press -> {
            put(of + "press force", press.force());
            put(of + "press pressure", press.pressure());
        });
        put(of + "solids after pressing", piece.solids());
        piece.dryingStage().optional().ifPresent(drying -> {
            put(of + "dryer loads", drying.loads());
            put(of + "drying time", drying.time());
            put(of + "water evaporated", drying.water());
        });
        finished(of, piece.finished());
        piece.envelopeStage().optional().ifPresent(envelope -> {
            put(of + "blank width", envelope.blankWidth());
            put(of + "blank height", envelope.blankHeight());
            put(of + "seam", envelope.seam());
            put(of + "play along", envelope.playAlong());
            put(of + "play across", envelope.playAcross());
            put(of + "pairs that fit", envelope.sharePairsFit());
        });
        piece.mailStage().optional().ifPresent(mail -> {
            put(of + "mailed mass", mail.mass());
            put(of + "mailed thickness", mail.thickness());
        });
        put(of + "piece hours", piece.workingHours());
    }

    private void vat(String of, VatPlan vat) {
        put(of + "vat stock", vat.stock());
        put(of + "vat water", vat.water());
        put(of + "vat bail", vat.bail());
        put(of + "lift", vat.lift());
        put(of + "sheets to a recharge", vat.every());
        put(of + "recharges", vat.recharges().size());
        if (!vat.recharges().isEmpty()) {
            VatPlan.Recharge last = vat.recharges().get(vat.recharges().size() - 1);
            put(of + "last recharge stock", last.stock());
            put(of + "last recharge water", last.water());
            put(of + "last recharge bail", last.bail());
        }
        put(of + "lightest", vat.lightest());
        put(of + "heaviest", vat.heaviest());
    }

    private void finished(String of, FinishedPiece finished) {
        put(of + "width", finished.width());
        put(of + "height", finished.height());
        put(of + "grammage", finished.grammage());
        finished.caliperStage().optional().ifPresent(caliper -> put(of + "caliper", caliper));
        put(of + "mass", finished.mass());
        finished.pileStage().optional().ifPresent(pile -> put(of + "pile", pile));
        put(of + "shrinkage along", finished.shrinkageAlong());
        put(of + "shrinkage across", finished.shrinkageAcross());
        put(of + "load", finished.load());
    }

    private void put(String name, double number) {
        double[] last = figures.put(name, new double[] {number});
        assertThat(last).as(name).isNull();
    }

    private void put(String name, Amount<?> amount) {
        put(name, amount.si());
    }

    private void put(String name, Estimate<?> estimate) {
        double[] last = figures.put(name, new double[] {
            estimate.likely().si(), estimate.low().si(), estimate.high().si()
        });
        assertThat(last).as(name).isNull();
    }
}
