package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.air.Air;
import org.papermath.evidence.Reading;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.SolutionStrength;
import org.papermath.quantity.WaterRetention;
import org.papermath.record.Measurement;
import org.papermath.sheet.Restraint;

/** What was measured: the word under {@code "what"} says which members follow. */
public final class MeasurementMapping {
    public static final String MOISTURE_SAMPLE = "moisture sample";
    public static final String FIBRE_WEIGHED = "fibre weighed";
    public static final String LOAD = "beater load";
    public static final String NUMBER_READ = "drainability";
    public static final String FREENESS_READ = "freeness";
    public static final String TIMED_SHEET = "timed sheet";
    public static final String VAT_FILLED = "vat filled";
    public static final String WATER_DRIED = "water dried";
    public static final String WEIGHED_SHEET = "weighed sheet";
    public static final String PRESSED = "pressed";
    public static final String COUNT = "count";
    public static final String DRIED = "dried";
    public static final String FINISHED = "finished";
    public static final String MARKS = "marks";
    public static final String HOURS = "hours";
    public static final String COOKED = "cooked";
    public static final String BOTH_TESTERS = "both testers";
    public static final String WATER_SPUN = "water spun";
    public static final String JAR_COMPARED = "jar compared";
    public static final String BURNT = "burnt";
    public static final String TWO_AIRS = "two airs";
    public static final String ADDITIVE_WEIGHED = "additive weighed";
    public static final String BEATEN = "beaten";
    public static final String VAT_STOOD = "vat stood";
    public static final String FORMED = "formed";
    public static final int MOST = 1_000_000_000;

    private static final Map<String, Format<?>> FORMATS = new LinkedHashMap<>();

    static {
        format(MOISTURE_SAMPLE, Measurement.MoistureSample.class, MeasurementMapping::moistureSample, (out, one) -> {
            FibreMapping.write(out.member("fibre"), one.fibre());
            FibreMapping.form(out, one.fibre(), one.form());
            reading(out, "asBought", one.asBought());
            reading(out, "dried", one.dried());
        });
        format(FIBRE_WEIGHED, Measurement.FibreWeighed.class, MeasurementMapping::fibreWeighed, (out, one) -> {
            FibreMapping.write(out.member("fibre"), one.fibre());
            reading(out, "asBought", one.asBought());
        });
        format(LOAD, Measurement.Load.class, MeasurementMapping::load, (out, one) -> {
            reading(out, "stock", one.stock());
            reading(out, "time", one.time());
            if (one.filled().si() != 1) {
                out.member("filled").quantity(one.filled());
            }
        });
        format(NUMBER_READ, Measurement.NumberRead.class, MeasurementMapping::numberRead, (out, one) -> {
            reading(out, "beating", one.beating());
            reading(out, "number", one.number());
        });
        format(FREENESS_READ, Measurement.FreenessRead.class, MeasurementMapping::freenessRead, (out, one) -> {
            reading(out, "beating", one.beating());
            reading(out, "freeness", one.freeness());
        });
        format(TIMED_SHEET, Measurement.TimedSheet.class, MeasurementMapping::timedSheet, (out, one) -> {
            reading(out, "time", one.time());
            reading(out, "depth", one.depth());
            reading(out, "stock", one.stock());
            out.member("water").quantity(one.water());
        });
        format(VAT_FILLED, Measurement.VatFilled.class, MeasurementMapping::vatFilled, (out, one) -> {
            reading(out, "volume", one.volume());
        });
        format(WATER_DRIED, Measurement.WaterDried.class, MeasurementMapping::waterDried, (out, one) -> {
            reading(out, "dripping", one.dripping());
            reading(out, "vat", one.vat());
        });
        format(WEIGHED_SHEET, Measurement.WeighedSheet.class, MeasurementMapping::weighedSheet, (out, one) -> {
            reading(out, "couched", one.couched());
            ReadingMapping.write(out, "pressed", one.pressed());
            reading(out, "ovenDry", one.ovenDry());
            reading(out, "width", one.width());
            reading(out, "height", one.height());
        });
        format(PRESSED, Measurement.Pressed.class, MeasurementMapping::pressed, (out, one) -> {
            ReadingMapping.write(out, "force", one.force());
            reading(out, "pressure", one.pressure());
            reading(out, "hold", one.hold());
        });
        format(COUNT, Measurement.Count.class, MeasurementMapping::count, (out, one) -> {
            out.member("step").text(one.step().word());
            out.member("handled").count(one.handled());
            out.member("rejected").count(one.rejected());
        });
        format(DRIED, Measurement.Dried.class, MeasurementMapping::dried, (out, one) -> {
            reading(out, "before", one.before());
            reading(out, "after", one.after());
            reading(out, "time", one.time());
            reading(out, "ovenDry", one.ovenDry());
            out.member("faces").quantity(one.faces());
            out.member("changes").count(one.changes());
            out.member("air").object(in -> AirMapping.write(in, one.air()));
        });
        format(FINISHED, Measurement.Finished.class, MeasurementMapping::finished, (out, one) -> {
            reading(out, "width", one.width());
            reading(out, "height", one.height());
            reading(out, "mass", one.mass());
            ReadingMapping.write(out, "caliper", one.caliper());
            ReadingMapping.write(out, "ovenDry", one.ovenDry());
            out.member("air").object(in -> AirMapping.write(in, one.air()));
        });
        format(MARKS, Measurement.Marks.class, MeasurementMapping::marks, (out, one) -> {
            restraint(out.member("restraint"), one.restraint());
            reading(out, "wetAlong", one.wetAlong());
            reading(out, "dryAlong", one.dryAlong());
            reading(out, "wetAcross", one.wetAcross());
            reading(out, "dryAcross", one.dryAcross());
        });
        format(HOURS, Measurement.Hours.class, MeasurementMapping::hours, (out, one) -> {
            out.member("work").text(one.work().word());
            reading(out, "time", one.time());
            out.member("count").count(one.count());
        });
        format(COOKED, Measurement.Cooked.class, MeasurementMapping::cooked, (out, one) -> {
            FibreMapping.write(out.member("fibre"), one.fibre());
            FibreMapping.form(out, one.fibre(), one.form());
            reading(out, "asBought", one.asBought());
            reading(out, "stuff", one.stuff());
        });
        format(BOTH_TESTERS, Measurement.BothTesters.class, MeasurementMapping::bothTesters, (out, one) -> {
            reading(out, "number", one.number());
            reading(out, "freeness", one.freeness());
        });
        format(WATER_SPUN, Measurement.WaterSpun.class, MeasurementMapping::waterSpun, (out, one) -> {
            reading(out, "number", one.number());
            reading(out, "retention", one.value());
            out.member("spin").text(CommonMembers.word(one.spin()));
        });
        format(JAR_COMPARED, Measurement.JarCompared.class, MeasurementMapping::jarCompared, (out, one) -> {
            additive(out, one.additive(), one.circumstance());
            reading(out, "given", one.given());
            reading(out, "volume", one.vat());
            reading(out, "jar", one.jar());
        });
        format(BURNT, Measurement.Burnt.class, MeasurementMapping::burnt, (out, one) -> {
            additive(out, one.additive(), one.circumstance());
            reading(out, "dose", one.dose());
            reading(out, "sheetAsh", one.sheetAsh());
            reading(out, "fibreAsh", one.fibreAsh());
            out.member("residue").quantity(one.residue());
        });
        format(TWO_AIRS, Measurement.TwoAirs.class, MeasurementMapping::twoAirs, (out, one) -> {
            out.member("shrunk").quantity(one.shrunk());
            reading(out, "first", one.first());
            out.member("firstAir").object(in -> AirMapping.write(in, one.firstAir()));
            reading(out, "second", one.second());
            out.member("secondAir").object(in -> AirMapping.write(in, one.secondAir()));
        });
    }

    static {
        format(ADDITIVE_WEIGHED, Measurement.AdditiveWeighed.class, MeasurementMapping::additiveWeighed, (out, one) -> {
            out.member("additive").object(in -> additive(in, one.additive()));
            reading(out, "product", one.product());
            ReadingMapping.write(out, "ovenDryFibre", one.fibre());
        });
        format(BEATEN, Measurement.Beaten.class, MeasurementMapping::beaten, (out, one) -> {
            one.fibre().ifPresent(fibre -> FibreMapping.write(out.member("fibre"), fibre));
            reading(out, "time", one.time());
        });
        format(VAT_STOOD, Measurement.VatStood.class, MeasurementMapping::vatStood, (out, one) -> {
            reading(out, "consistency", one.consistency());
        });
        format(FORMED, Measurement.Formed.class, MeasurementMapping::formed, (out, one) -> {
            out.member("sheets").count(one.sheets());
            out.member("good").count(one.good());
        });
    }

    /** How a measurement of one sort is read and written, behind the word that says which it is. */
    private record Format<M extends Measurement>(
            String word,
            Class<M> type,
            Function<ObjectReader, ReadResult<Measurement>> reading,
            BiConsumer<ObjectWriter, M> writing) {
        void writeMembers(ObjectWriter out, Measurement measurement) {
            writing.accept(out, type.cast(measurement));
        }
    }

    private static <M extends Measurement> void format(
            String word,
            Class<M> type,
            Function<ObjectReader, ReadResult<Measurement>> reading,
            BiConsumer<ObjectWriter, M> writing) {
        FORMATS.put(word, new Format<>(word, type, reading, writing));
    }

    private MeasurementMapping() {}

    public static List<String> words() {
        return List.copyOf(FORMATS.keySet());
    }

    public static ReadResult<Measurement> read(ObjectReader in) {
        ReadResult<String> what = in.required("what").choice(FORMATS.keySet(), word -> word);
        if (what.isFaulty() || !what.isGiven()) {
            // Of a measurement of no known sort nobody can say which members it has.
            in.names().forEach(in::optional);
            return in.make(() -> {
                throw new IllegalStateException("made of a word that is not known");
            });
        }
        return Objects.requireNonNull(FORMATS.get(what.get())).reading.apply(in);
    }

    public static void write(ObjectWriter out, Measurement measurement) {
        Format<?> format = FORMATS.values().stream()
                .filter(one -> one.type.isInstance(measurement))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a measurement nobody writes: " + measurement));
        out.member("what").text(format.word);
        format.writeMembers(out, measurement);
    }

    private static void additive(ObjectWriter out, Additive additive, RetentionModel.Circumstance circumstance) {
        out.member("additive").object(in -> additive(in, additive));
        out.member("circumstance").text(CommonMembers.word(circumstance));
    }

    public static void additive(ObjectWriter out, Additive additive) {
        CommonMembers.name(out.member("name"), additive.name());
        out.member("purpose").text(CommonMembers.word(additive.purpose()));
        additive.activeFraction().ifPresent(active -> out.member("active").quantity(active));
    }

    private static <Q extends Quantity<Q>> void reading(ObjectWriter out, String name, Reading<Q> reading) {
        ReadingMapping.write(out.member(name), reading);
    }

    private static <Q extends Quantity<Q>> ReadResult<Reading<Q>> required(ObjectReader in, String name, Kind<Q> kind) {
        return ReadingMapping.read(in.required(name), kind);
    }

    private static <Q extends Quantity<Q>> ReadResult<Reading<Q>> optional(ObjectReader in, String name, Kind<Q> kind) {
        ValueReader at = in.optional(name);
        return at.isBlank(ReadingMapping.READ) ? ReadResult.nothing(at) : ReadingMapping.read(at, kind);
    }

    private static ReadResult<Measurement> additiveWeighed(ObjectReader in) {
        ReadResult<Additive> additive = in.required("additive").object(MeasurementMapping::additive);
        ReadResult<Reading<Mass>> product = required(in, "product", Kinds.MASS);
        ReadResult<Reading<Mass>> fibre = optional(in, "ovenDryFibre", Kinds.MASS);
        return in.make(() -> new Measurement.AdditiveWeighed(additive.get(), product.get(), fibre.optional()));
    }

    private static ReadResult<Measurement> beaten(ObjectReader in) {
        ValueReader at = in.optional("fibre");
        ReadResult<Fibre> fibre = FibreMapping.read(at);
        ReadResult<Reading<Time>> time = required(in, "time", Kinds.TIME);
        return in.make(() -> new Measurement.Beaten(fibre.optional(), time.get()));
    }

    private static ReadResult<Measurement> vatStood(ObjectReader in) {
        ReadResult<Reading<Consistency>> consistency = required(in, "consistency", Kinds.CONSISTENCY);
        return in.make(() -> new Measurement.VatStood(consistency.get()));
    }

    private static ReadResult<Measurement> formed(ObjectReader in) {
        ReadResult<Integer> sheets = in.required("sheets").count(1, MOST);
        ReadResult<Integer> good = in.required("good").count(0, MOST);
        return in.make(() -> new Measurement.Formed(sheets.get(), good.get()));
    }

    private static ReadResult<Measurement> moistureSample(ObjectReader in) {
        ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        ReadResult<Reading<Mass>> asBought = required(in, "asBought", Kinds.MASS);
        ReadResult<Reading<Mass>> dried = required(in, "dried", Kinds.MASS);
        ReadResult<BoughtFibre.Form> form = FibreMapping.form(in);
        return in.make(() -> new Measurement.MoistureSample(
                fibre.get(),
                form.optional().orElseGet(() -> BoughtFibre.Form.usual(fibre.get())),
                asBought.get(),
                dried.get()));
    }

    private static ReadResult<Measurement> fibreWeighed(ObjectReader in) {
        ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        ReadResult<Reading<Mass>> asBought = required(in, "asBought", Kinds.MASS);
        return in.make(() -> new Measurement.FibreWeighed(fibre.get(), asBought.get()));
    }

    private static ReadResult<Measurement> load(ObjectReader in) {
        ReadResult<Reading<Volume>> stock = required(in, "stock", Kinds.VOLUME);
        ReadResult<Reading<Time>> time = required(in, "time", Kinds.TIME);
        ReadResult<Amount<Share>> filled =
                CommonMembers.aboveZero(in.optional("filled"), Kinds.SHARE, "filling of the beater");
        return in.make(() -> new Measurement.Load(stock.get(), time.get(), filled.orElse(Kinds.SHARE.of(100, "%"))));
    }

    private static ReadResult<Measurement> numberRead(ObjectReader in) {
        ReadResult<Reading<Time>> beating = required(in, "beating", Kinds.TIME);
        ReadResult<Reading<SchopperRiegler>> number = required(in, "number", Kinds.SCHOPPER_RIEGLER);
        return in.make(() -> new Measurement.NumberRead(beating.get(), number.get()));
    }

    private static ReadResult<Measurement> freenessRead(ObjectReader in) {
        ReadResult<Reading<Time>> beating = required(in, "beating", Kinds.TIME);
        ReadResult<Reading<CanadianFreeness>> freeness = required(in, "freeness", Kinds.CANADIAN_FREENESS);
        return in.make(() -> new Measurement.FreenessRead(beating.get(), freeness.get()));
    }

    private static ReadResult<Measurement> timedSheet(ObjectReader in) {
        ReadResult<Reading<Time>> time = required(in, "time", Kinds.TIME);
        ReadResult<Reading<Length>> depth = required(in, "depth", Kinds.LENGTH);
        ReadResult<Reading<FibreConcentration>> stock = required(in, "stock", Kinds.FIBRE_CONCENTRATION);
        ReadResult<Amount<Temperature>> water = in.required("water").quantity(Kinds.TEMPERATURE);
        return in.make(() -> new Measurement.TimedSheet(time.get(), depth.get(), stock.get(), water.get()));
    }

    private static ReadResult<Measurement> vatFilled(ObjectReader in) {
        ReadResult<Reading<Volume>> volume = required(in, "volume", Kinds.VOLUME);
        return in.make(() -> new Measurement.VatFilled(volume.get()));
    }

    private static ReadResult<Measurement> waterDried(ObjectReader in) {
        ReadResult<Reading<FibreConcentration>> dripping = required(in, "dripping", Kinds.FIBRE_CONCENTRATION);
        ReadResult<Reading<FibreConcentration>> vat = required(in, "vat", Kinds.FIBRE_CONCENTRATION);
        return in.make(() -> new Measurement.WaterDried(dripping.get(), vat.get()));
    }

    private static ReadResult<Measurement> weighedSheet(ObjectReader in) {
        ReadResult<Reading<Mass>> couched = required(in, "couched", Kinds.MASS);
        ReadResult<Reading<Mass>> pressed = optional(in, "pressed", Kinds.MASS);
        ReadResult<Reading<Mass>> ovenDry = required(in, "ovenDry", Kinds.MASS);
        ReadResult<Reading<Length>> width = required(in, "width", Kinds.LENGTH);
        ReadResult<Reading<Length>> height = required(in, "height", Kinds.LENGTH);
        return in.make(() -> new Measurement.WeighedSheet(
                couched.get(), pressed.optional(), ovenDry.get(), width.get(), height.get()));
    }

    private static ReadResult<Measurement> pressed(ObjectReader in) {
        ReadResult<Reading<Force>> force = optional(in, "force", Kinds.FORCE);
        ReadResult<Reading<SheetPressure>> pressure = required(in, "pressure", Kinds.SHEET_PRESSURE);
        ReadResult<Reading<Time>> hold = required(in, "hold", Kinds.TIME);
        return in.make(() -> new Measurement.Pressed(force.optional(), pressure.get(), hold.get()));
    }

    private static ReadResult<Measurement> count(ObjectReader in) {
        ReadResult<Measurement.Step> step =
                in.required("step").choice(List.of(Measurement.Step.values()), Measurement.Step::word);
        ReadResult<Integer> handled = in.required("handled").count(1, MOST);
        ReadResult<Integer> rejected = in.required("rejected").count(0, MOST);
        return in.make(() -> new Measurement.Count(step.get(), handled.get(), rejected.get()));
    }

    private static ReadResult<Measurement> dried(ObjectReader in) {
        ReadResult<Reading<Mass>> before = required(in, "before", Kinds.MASS);
        ReadResult<Reading<Mass>> after = required(in, "after", Kinds.MASS);
        ReadResult<Reading<Time>> time = required(in, "time", Kinds.TIME);
        ReadResult<Reading<Mass>> ovenDry = required(in, "ovenDry", Kinds.MASS);
        ReadResult<Amount<Area>> faces = CommonMembers.aboveZero(in.required("faces"), Kinds.AREA, "area of the faces");
        ReadResult<Integer> changes = in.required("changes").count(0, MOST);
        ReadResult<Air> air = in.required("air").object(AirMapping::read);
        return in.make(() -> new Measurement.Dried(
                before.get(), after.get(), time.get(), ovenDry.get(), faces.get(), changes.get(), air.get()));
    }

    private static ReadResult<Measurement> finished(ObjectReader in) {
        ReadResult<Reading<Length>> width = required(in, "width", Kinds.LENGTH);
        ReadResult<Reading<Length>> height = required(in, "height", Kinds.LENGTH);
        ReadResult<Reading<Mass>> mass = required(in, "mass", Kinds.MASS);
        ReadResult<Reading<Length>> thickness = optional(in, "caliper", Kinds.LENGTH);
        ReadResult<Reading<Mass>> ovenDry = optional(in, "ovenDry", Kinds.MASS);
        ReadResult<Air> air = in.required("air").object(AirMapping::read);
        return in.make(() -> new Measurement.Finished(
                width.get(), height.get(), mass.get(), thickness.optional(), ovenDry.optional(), air.get()));
    }

    private static ReadResult<Measurement> marks(ObjectReader in) {
        ReadResult<Restraint> restraint = restraint(in.required("restraint"));
        ReadResult<Reading<Length>> wetAlong = required(in, "wetAlong", Kinds.LENGTH);
        ReadResult<Reading<Length>> dryAlong = required(in, "dryAlong", Kinds.LENGTH);
        ReadResult<Reading<Length>> wetAcross = required(in, "wetAcross", Kinds.LENGTH);
        ReadResult<Reading<Length>> dryAcross = required(in, "dryAcross", Kinds.LENGTH);
        return in.make(() -> new Measurement.Marks(
                restraint.get(), wetAlong.get(), dryAlong.get(), wetAcross.get(), dryAcross.get()));
    }

    private static ReadResult<Measurement> hours(ObjectReader in) {
        ReadResult<Measurement.Work> work =
                in.required("work").choice(List.of(Measurement.Work.values()), Measurement.Work::word);
        ReadResult<Reading<Time>> time = required(in, "time", Kinds.TIME);
        ReadResult<Integer> count = in.required("count").count(1, MOST);
        return in.make(() -> new Measurement.Hours(work.get(), time.get(), count.get()));
    }

    private static ReadResult<Measurement> cooked(ObjectReader in) {
        ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        ReadResult<Reading<Mass>> asBought = required(in, "asBought", Kinds.MASS);
        ReadResult<Reading<Mass>> stuff = required(in, "stuff", Kinds.MASS);
        ReadResult<BoughtFibre.Form> form = FibreMapping.form(in);
        return in.make(() -> new Measurement.Cooked(
                fibre.get(),
                form.optional().orElseGet(() -> BoughtFibre.Form.usual(fibre.get())),
                asBought.get(),
                stuff.get()));
    }

    private static ReadResult<Measurement> bothTesters(ObjectReader in) {
        ReadResult<Reading<SchopperRiegler>> number = required(in, "number", Kinds.SCHOPPER_RIEGLER);
        ReadResult<Reading<CanadianFreeness>> freeness = required(in, "freeness", Kinds.CANADIAN_FREENESS);
        return in.make(() -> new Measurement.BothTesters(number.get(), freeness.get()));
    }

    private static ReadResult<Measurement> waterSpun(ObjectReader in) {
        ReadResult<Reading<SchopperRiegler>> number = required(in, "number", Kinds.SCHOPPER_RIEGLER);
        ReadResult<Reading<WaterRetention>> value = required(in, "retention", Kinds.WATER_RETENTION);
        ReadResult<WaterRetentionModel.Spin> spin =
                in.required("spin").choice(List.of(WaterRetentionModel.Spin.values()), CommonMembers::word);
        return in.make(() -> new Measurement.WaterSpun(number.get(), value.get(), spin.get()));
    }

    private static ReadResult<Measurement> jarCompared(ObjectReader in) {
        ReadResult<Additive> additive = in.required("additive").object(MeasurementMapping::additive);
        ReadResult<RetentionModel.Circumstance> circumstance = circumstance(in);
        ReadResult<Reading<Mass>> given = required(in, "given", Kinds.MASS);
        ReadResult<Reading<Volume>> vat = required(in, "volume", Kinds.VOLUME);
        ReadResult<Reading<SolutionStrength>> jar = required(in, "jar", Kinds.SOLUTION_STRENGTH);
        return in.make(() ->
                new Measurement.JarCompared(additive.get(), circumstance.get(), given.get(), vat.get(), jar.get()));
    }

    private static ReadResult<Measurement> burnt(ObjectReader in) {
        ReadResult<Additive> additive = in.required("additive").object(MeasurementMapping::additive);
        ReadResult<RetentionModel.Circumstance> circumstance = circumstance(in);
        ReadResult<Reading<Dose>> dose = required(in, "dose", Kinds.DOSE);
        ReadResult<Reading<Share>> sheet = required(in, "sheetAsh", Kinds.SHARE);
        ReadResult<Reading<Share>> fibre = required(in, "fibreAsh", Kinds.SHARE);
        ReadResult<Amount<Share>> residue =
                CommonMembers.aboveZero(in.required("residue"), Kinds.SHARE, "residue of the filler");
        return in.make(() -> new Measurement.Burnt(
                additive.get(), circumstance.get(), dose.get(), sheet.get(), fibre.get(), residue.get()));
    }

    private static ReadResult<Measurement> twoAirs(ObjectReader in) {
        ReadResult<Amount<LinearShrinkage>> shrunk = in.required("shrunk").quantity(Kinds.LINEAR_SHRINKAGE);
        ReadResult<Reading<Length>> first = required(in, "first", Kinds.LENGTH);
        ReadResult<Air> firstAir = in.required("firstAir").object(AirMapping::read);
        ReadResult<Reading<Length>> second = required(in, "second", Kinds.LENGTH);
        ReadResult<Air> secondAir = in.required("secondAir").object(AirMapping::read);
        return in.make(() ->
                new Measurement.TwoAirs(shrunk.get(), first.get(), firstAir.get(), second.get(), secondAir.get()));
    }

    public static ReadResult<Additive> additive(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Additive.Purpose> purpose =
                in.required("purpose").choice(List.of(Additive.Purpose.values()), CommonMembers::word);
        ReadResult<Amount<Share>> active =
                CommonMembers.aboveZero(in.optional("active"), Kinds.SHARE, "active fraction");
        return in.make(() -> {
            Additive whole = Additive.of(name.get(), purpose.get());
            return active.optional().map(whole::active).orElse(whole);
        });
    }

    private static ReadResult<RetentionModel.Circumstance> circumstance(ObjectReader in) {
        return in.required("circumstance").choice(List.of(RetentionModel.Circumstance.values()), CommonMembers::word);
    }

    private static ReadResult<Restraint> restraint(ValueReader at) {
        return at.isObject()
                ? at.object(in -> {
                    ReadResult<String> name = in.required("name").text();
                    ReadResult<String> subject = in.required("subject").text();
                    ReadResult<Boolean> along = in.required("heldAlong").flag();
                    ReadResult<Boolean> across = in.required("heldAcross").flag();
                    return in.make(() -> new Restraint(name.get(), subject.get(), along.get(), across.get()));
                })
                : at.text().map(Restraint::of);
    }

    private static void restraint(ValueWriter out, Restraint restraint) {
        if (isKnown(restraint) && !out.keeps()) {
            out.text(restraint.name());
        } else {
            out.object(in -> {
                CommonMembers.text(in.member("name"), restraint.name());
                CommonMembers.text(in.member("subject"), restraint.subject());
                in.member("heldAlong").flag(restraint.heldAlong());
                in.member("heldAcross").flag(restraint.heldAcross());
            });
        }
    }

    private static boolean isKnown(Restraint restraint) {
        try {
            return Restraint.of(restraint.name()).equals(restraint);
        } catch (PapermathException e) {
            return false;
        }
    }
}
