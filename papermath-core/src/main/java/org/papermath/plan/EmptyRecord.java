package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Opening;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;
import org.papermath.text.Wrap;

/**
 * A record of a batch before it is made: what is to be read, in the order of the work, with what is planned beside it. Made
 * by {@link MakingPlan#emptyRecord(String, LocalDate)}.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * PiecePlan piece = plan.pieces().get(0);
 * EmptyRecord empty = plan.emptyRecord(piece.batch(), piece.name(), LocalDate.of(2026, 3, 14));
 * String forTheWall = empty.text();
 * BatchRecord made = empty.record().toBuilder()
 *         .add(new Measurement.Beaten(Optional.empty(), Reading.of(hours(3), minutes(5))))
 *         .build();
 * }</pre>
 *
 * <p>{@link #record()} holds what was planned and no reading. A blank that is not filled in is no reading.
 */
public final class EmptyRecord {
    private static final int WIDTH = 80;
    private static final int RULE = 22;

    /** Sheets to weigh from the couch to the oven, and finished ones. */
    private static final int SHEETS = 2;

    private final BatchRecord record;
    private final List<Blank> blanks;

    private EmptyRecord(BatchRecord record, List<FoundBlank> blanks) {
        this.record = record;
        this.blanks = List.copyOf(blanks);
    }

    /** One thing to read. */
    public sealed interface Blank permits FoundBlank {
        /** {@return the stage of the work} */
        StageOfWork stage();

        /** {@return what to do and with what, such as {@code Weigh cotton-rag as bought, on the scale of 5 g}} */
        String what();

        /** {@return what is to be written down, each with what is planned} */
        List<ToFill> toFill();

        /** {@return the reading as it would be if all came as planned; it is a pattern, and was not read} */
        Measurement asPlanned();
    }

    /** One line to write on. */
    public sealed interface ToFill permits FoundToFill {
        /** {@return what is written there} */
        String what();

        /** {@return what is planned, in words; empty where nothing is} */
        Optional<String> planned();

        /** {@return the unit it is written in; empty for a count} */
        String unit();
    }

    record FoundToFill(String what, Optional<String> planned, String unit) implements ToFill {
        @Override
        public String toString() {
            return what + planned.map(value -> " (planned " + value + ")").orElse("");
        }
    }

    record FoundBlank(StageOfWork stage, String what, List<ToFill> toFill, Measurement asPlanned) implements Blank {
        @Override
        public String toString() {
            return what + ": " + toFill;
        }
    }

    static EmptyRecord of(MakingPlan plan, BatchPlan batch, PiecePlan piece, LocalDate day) {
        return new Writing(plan, batch, piece).done(day);
    }

    /** Puts the blanks together. */
    private static final class Writing {
        private final MakingPlan plan;
        private final Studio studio;
        private final BatchPlan batch;
        private final PiecePlan piece;
        private final Amount<Mass> scale;
        private final Amount<Mass> fine;
        private final List<FoundBlank> blanks = new ArrayList<>();

        Writing(MakingPlan plan, BatchPlan batch, PiecePlan piece) {
            this.plan = plan;
            this.studio = plan.studio();
            this.batch = batch;
            this.piece = piece;
            this.scale = studio.scaleStep();
            this.fine = studio.fineScaleStep();
        }

        EmptyRecord done(LocalDate day) {
            BatchRecord.Builder begun = BatchRecord.builder(plan.order().name() + ", " + piece.name(), day)
                    .recipe(batch.recipe())
                    .assumptions(studio.assumptions())
                    .planned(BatchRecord.SHEET_SOLIDS, piece.forming().solids());
            batch.beatingStage()
                    .optional()
                    .ifPresent(beating -> begun.beater(beating.beater().name()));
            piece.vatStage()
                    .optional()
                    .ifPresent(vat -> begun.vat(studio.vat().orElseThrow().name()));
            piece.pressStage()
                    .optional()
                    .ifPresent(press -> begun.press(press.press().name()));
            piece.dryingStage()
                    .optional()
                    .ifPresent(drying -> begun.dryer(drying.dryer().name()));
            for (FibreToWeigh.Line kind : batch.fibre().kinds()) {
                begun.planned(BatchRecord.weighing(kind.fibre()), kind.asBought());
            }
            for (AdditiveToWeigh one : batch.additives()) {
                begun.planned(BatchRecord.weighing(one.additive()), one.productInAll());
            }
            begun.planned("drainability", batch.drainability().likely());
            piece.vatStage().optional().ifPresent(vat -> begun.planned("vat.consistency", vat.consistency()));
            begun.planned("sheet.couched", piece.couchedMass().likely())
                    .planned("sheet.pressed-solids", piece.solids().likely())
                    .planned("finished.grammage", piece.finished().grammage().likely());
            piece.finished()
                    .caliperStage()
                    .optional()
                    .ifPresent(caliper -> begun.planned("finished.caliper", caliper.likely()));
            stuff();
            sheets();
            finished();
            return new EmptyRecord(begun.build(), blanks);
        }

        private void blank(StageOfWork stage, String what, Measurement asPlanned, ToFill... toFill) {
            blanks.add(new FoundBlank(stage, what, List.of(toFill), asPlanned));
        }

        private static ToFill fill(String what, Amount<?> planned) {
            return new FoundToFill(what, Optional.of(planned.toString()), unit(planned));
        }

        private static ToFill fill(String what, Estimate<?> planned) {
            return new FoundToFill(what, Optional.of(planned.toString()), unit(planned.likely()));
        }

        private static ToFill count(String what, Optional<String> planned) {
            return new FoundToFill(what, planned, "");
        }

        private static String unit(Amount<?> amount) {
            String text = amount.toString();
            int space = text.indexOf(' ');
            return space < 0 ? "" : text.substring(space + 1);
        }

        /** A reading of what is planned, to within half a step of the instrument. */
        private static <Q extends Quantity<Q>> Reading<Q> read(Amount<Q> planned, Amount<Q> step) {
            return Reading.of(planned, planned.kind().ofSi(step.si() / 2).to(step.getUnit()));
        }

        private static <Q extends Quantity<Q>> Reading<Q> read(Amount<Q> planned, double error) {
            return Reading.of(planned, planned.kind().ofSi(error).to(planned.getUnit()));
        }

        private void stuff() {
            for (FibreToWeigh.Line kind : batch.fibre().kinds()) {
                if (kind.asBought().si() > 0) {
                    blank(
                            StageOfWork.FIBRE,
                            "Weigh " + kind.fibre().id() + " as bought, all of it, on the scale of " + scale,
                            new Measurement.FibreWeighed(kind.fibre(), read(kind.asBought(), scale)),
                            fill("mass", kind.asBought()),
                            count("lot", Optional.empty()));
                }
            }
            Set<Amount<Time>> times = new LinkedHashSet<>();
            batch.beatingStage().optional().ifPresent(beating -> {
                for (BeaterLoads run : beating.runs()) {
                    if (run.timeEach().si() > 0) {
                        times.add(run.timeEach());
                        beaten(run);
                    }
                }
            });
            List<AdditiveDose> order = AdditiveDose.inOrder(batch.recipe().additives());
            for (AdditiveDose dose : order) {
                batch.additives().stream()
                        .filter(one ->
                                one.additive().name().equals(dose.additive().name()))
                        .findFirst()
                        .ifPresent(one -> blank(
                                StageOfWork.ADDITIVES,
                                "Weigh " + one.additive().name() + ", in all loads together, on the scale of " + fine,
                                new Measurement.AdditiveWeighed(
                                        one.additive(), read(one.productInAll(), fine), Optional.empty()),
                                fill("product", one.productInAll()),
                                count("lot", Optional.empty())));
            }
            Amount<Time> longest = times.stream()
                    .reduce((one, other) -> one.si() >= other.si() ? one : other)
                    .orElse(Kinds.TIME.of(0, "h"));
            blank(
                    StageOfWork.BEATING,
                    "Read the drainability of the stuff on the tester",
                    new Measurement.NumberRead(
                            read(longest, Kinds.TIME.of(10, "min")),
                            read(batch.drainability().likely(), 2)),
                    fill("beaten", longest),
                    fill("drainability", batch.drainability()));
            piece.vatStage()
                    .optional()
                    .ifPresent(vat -> blank(
                            StageOfWork.VAT,
                            "Strain a litre of the stirred vat, dry it in the oven and weigh it",
                            new Measurement.VatStood(
                                    read(vat.consistency(), vat.consistency().si() * 0.02)),
                            fill("consistency", vat.consistency())));
        }

        /** What has a time of its own in the recipe is noted by itself. */
        private void beaten(BeaterLoads run) {
            Set<Optional<Fibre>> kinds = new LinkedHashSet<>();
            for (Fibre fibre : run.fibres()) {
                kinds.add(Optional.of(fibre)
                        .filter(one -> batch.recipe().beatingApart().containsKey(one)));
            }
            for (Optional<Fibre> apart : kinds) {
                blank(
                        StageOfWork.BEATING,
                        "Beat" + apart.map(fibre -> " " + fibre.id()).orElse("")
                                + ", each load with the roll down, by the clock",
                        new Measurement.Beaten(apart, read(run.timeEach(), Kinds.TIME.of(10, "min"))),
                        fill("time", run.timeEach()));
            }
        }

        private void sheets() {
            Amount<Mass> solids = piece.forming().solids();
            Amount<Mass> couched = piece.couchedMass().likely();
            Amount<Mass> pressed =
                    Kinds.MASS.ofSi(solids.si() / piece.solids().likely().si(), "g");
            Opening opening = piece.forming().opening();
            boolean isPressed = piece.pressStage().isDone();
            for (int i = 1; i <= SHEETS; i++) {
                List<ToFill> lines = new ArrayList<>(List.of(fill("couched", piece.couchedMass())));
                if (isPressed) {
                    lines.add(fill("pressed", pressed));
                }
                lines.add(fill("out of the oven", solids));
                lines.add(fill("width of the wet sheet", opening.width()));
                lines.add(fill("height of the wet sheet", opening.height()));
                blank(
                        StageOfWork.LIFT,
                        "Weigh sheet " + i + " off the mould"
                                + (isPressed ? ", out of the press" : "") + " and out of the oven, on the scale of "
                                + fine,
                        new Measurement.WeighedSheet(
                                read(couched, fine),
                                isPressed ? Optional.of(read(pressed, fine)) : Optional.empty(),
                                read(solids, fine),
                                read(opening.width(), 0.001),
                                read(opening.height(), 0.001)),
                        lines.toArray(ToFill[]::new));
            }
            piece.pressStage()
                    .optional()
                    .ifPresent(press -> blank(
                            StageOfWork.PRESSING,
                            "Press, and read the gauge and the clock",
                            new Measurement.Pressed(
                                    Optional.of(
                                            read(press.force(), press.force().si() * 0.02)),
                                    read(press.pressure(), press.pressure().si() * 0.02),
                                    read(press.time(), 10)),
                            fill("force", press.force()),
                            fill("pressure on the sheet", press.pressure()),
                            fill("hold", press.time())));
            piece.dryingStage().optional().ifPresent(drying -> dried(drying, solids));
        }

        private void dried(DryingPlan drying, Amount<Mass> solids) {
            int sheets = Math.max(1, Math.min(drying.atOnce(), 10));
            double wet = solids.si() / piece.solids().likely().si();
            double water = drying.water().likely().si() / piece.counts().sheets();
            Amount<Mass> before = Kinds.MASS.ofSi(sheets * wet, "g");
            Amount<Mass> after = Kinds.MASS.ofSi(sheets * Math.max(solids.si(), wet - water), "g");
            Amount<Mass> dry = Kinds.MASS.ofSi(sheets * solids.si(), "g");
            Opening opening = piece.forming().opening();
            List<ToFill> lines = new ArrayList<>(List.of(
                    fill("into the dryer", before),
                    fill("out of it", after),
                    fill("time", drying.time()),
                    fill("out of the oven", dry)));
            boolean changed = drying.blotterChanges() > 0 && drying.blotterChanges() < Integer.MAX_VALUE;
            if (changed) {
                lines.add(count("changes of blotters", Optional.of(String.valueOf(drying.blotterChanges()))));
            }
            blank(
                    StageOfWork.DRYING,
                    "Weigh " + sheets + " sheets into " + drying.dryer().name()
                            + " and out of it when they are dry, by the clock",
                    new Measurement.Dried(
                            read(before, fine),
                            read(after, fine),
                            read(drying.time().likely(), Kinds.TIME.of(10, "min")),
                            read(dry, fine),
                            Kinds.AREA.ofSi(
                                    sheets
                                            * opening.width().si()
                                            * opening.height().si(),
                                    "m2"),
                            changed ? drying.blotterChanges() : 0,
                            studio.room()),
                    lines.toArray(ToFill[]::new));
        }

        private void finished() {
            FinishedPiece done = piece.finished();
            Optional<Estimate<javax.measure.quantity.Length>> caliper =
                    done.caliperStage().optional();
            for (int i = 1; i <= SHEETS; i++) {
                List<ToFill> lines = new ArrayList<>(
                        List.of(fill("width", done.width()), fill("height", done.height()), fill("mass", done.mass())));
                caliper.ifPresent(thick -> lines.add(fill("caliper", thick)));
                blank(
                        StageOfWork.DENSITY,
                        "Measure finished piece " + i + " unfolded, by rule, scale and micrometer",
                        new Measurement.Finished(
                                read(done.width().likely(), 0.0005),
                                read(done.height().likely(), 0.0005),
                                read(done.mass().likely(), fine),
                                caliper.map(thick -> read(thick.likely(), 4e-6)),
                                Optional.empty(),
                                studio.room()),
                        lines.toArray(ToFill[]::new));
            }
            int sheets = piece.counts().sheets();
            Estimate<Dimensionless> good = piece.counts().good();
            for (Measurement.Step step : steps()) {
                blank(
                        StageOfWork.COUNTS,
                        "Count the rejects of " + step.word(),
                        new Measurement.Count(step, sheets, 0),
                        count("handled", Optional.empty()),
                        count("rejected", Optional.empty()));
            }
            blank(
                    StageOfWork.COUNTS,
                    "Count the sheets, trial sheets too, and the good pieces",
                    new Measurement.Formed(
                            sheets, (int) Math.round(good.likely().si())),
                    count("sheets formed", Optional.of(String.valueOf(sheets))),
                    count("good pieces", Optional.of(good.toString())));
            blank(
                    StageOfWork.HOURS,
                    "Note the time at the vat, and the sheets it was for",
                    new Measurement.Hours(
                            Measurement.Work.FORMING,
                            read(piece.timeAtVat().likely(), Kinds.TIME.of(10, "min")),
                            sheets),
                    fill("time", piece.timeAtVat()),
                    count("sheets", Optional.of(String.valueOf(sheets))));
        }

        private List<Measurement.Step> steps() {
            List<Measurement.Step> steps = new ArrayList<>(List.of(Measurement.Step.FORMING));
            if (piece.pressStage().isDone()) {
                steps.add(Measurement.Step.PRESSING);
            }
            if (piece.dryingStage().isDone()) {
                steps.add(Measurement.Step.DRYING);
            }
            if (piece.sizingStage().isDone()) {
                steps.add(Measurement.Step.SIZING);
            }
            if (piece.piece().edge() == Piece.Edge.CUT) {
                steps.add(Measurement.Step.CUTTING);
            }
            if (piece.envelopeStage().isDone()) {
                steps.add(Measurement.Step.FOLDING_ENVELOPES);
            } else if (piece.piece().folds() > 0) {
                steps.add(Measurement.Step.FOLDING_CARDS);
            }
            return steps;
        }
    }

    /**
     * Returns the record as it is begun: the recipe, what is taken for known, what is planned, and no reading.
     *
     * @return the record
     */
    public BatchRecord record() {
        return record;
    }

    /**
     * Returns what is to be read.
     *
     * @return an unmodifiable list, in the order of the work
     */
    public List<Blank> blanks() {
        return blanks;
    }

    /**
     * Returns the record as lines to write on, for the wall: in the order of the work, what to weigh and with what, what is
     * planned, and a rule to write on. No line is longer than 80 characters.
     *
     * @return the text, with a line break at its end
     */
    public String text() {
        StringBuilder text = new StringBuilder();
        append(text, "", record.name() + ", " + record.date());
        append(text, "", "recipe " + record.recipe().orElse("") + "; leave blank what was not read");
        StageOfWork last = null;
        for (Blank one : blanks) {
            if (one.stage() != last) {
                text.append('\n');
                last = one.stage();
            }
            append(text, "", one.what());
            for (ToFill line : one.toFill()) {
                String planned = line.planned().map(value -> "planned " + value).orElse("");
                String head = "    " + line.what();
                String rule = "_".repeat(RULE) + (line.unit().isEmpty() ? "" : " " + line.unit());
                int room = WIDTH - head.length() - planned.length() - rule.length() - 2;
                if (room >= 0) {
                    text.append(head)
                            .append("  ")
                            .append(planned)
                            .append(" ".repeat(room))
                            .append(rule);
                } else {
                    text.append(head).append("  ").append(planned).append('\n');
                    text.append(" ".repeat(Math.max(0, WIDTH - rule.length()))).append(rule);
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    private static void append(StringBuilder text, String indent, String words) {
        for (String line : Wrap.lines(words, WIDTH - indent.length())) {
            text.append(indent).append(line).append('\n');
        }
    }

    /** Returns for example {@code reading evening, leaflet (2026-03-14), 21 readings to take}. */
    @Override
    public String toString() {
        return record.name() + " (" + record.date() + "), " + blanks.size() + " readings to take";
    }
}
