package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.mould.Mould;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.schedule.WorkingTime;
import org.papermath.vat.Vat;

/** A studio. */
public final class StudioMapping {
    private record Steps(
            ReadResult<Amount<Mass>> scale,
            ReadResult<Amount<Mass>> fineScale,
            ReadResult<Amount<Volume>> jug,
            ReadResult<Amount<Time>> day) {
        void into(Studio.Builder studio) {
            scale.ifGiven(studio::scaleStep);
            fineScale.ifGiven(studio::fineScaleStep);
            jug.ifGiven(studio::jugStep);
            day.ifGiven(studio::workingDay);
        }
    }

    private record InHand(Fibre fibre, Amount<Mass> ovenDry) {}

    private StudioMapping() {}

    public static ReadResult<Studio> read(ObjectReader in) {
        return read(in, new Names("dryer"), new Names("studio"));
    }

    /** Reads a studio, and the names of its dryers and its own for whoever refers to them. */
    static ReadResult<Studio> read(ObjectReader in, Names dryerNames, Names studioNames) {
        ReadResult<String> name = studioNames.add(CommonMembers.name(in));
        ReadResult<Beater> beater = in.optional("beater").object(EquipmentMapping::beater);
        ReadResult<Vat> vat = in.optional("vat").object(EquipmentMapping::vat);
        Names mouldNames = new Names("mould");
        ReadResult<List<Mould>> moulds = list(in.optional("moulds"), one -> EquipmentMapping.mould(one, mouldNames));
        ReadResult<Press> press = in.optional("press").object(EquipmentMapping::press);
        ReadResult<Felts> felts = in.optional("felts").object(EquipmentMapping::felts);
        ReadResult<List<Dryer>> dryers = list(in.optional("dryers"), one -> EquipmentMapping.dryer(one, dryerNames));
        ReadResult<Air> room = in.optional("room").object(AirMapping::read);
        ReadResult<Ventilation> ventilation = in.optional("ventilation").object(EquipmentMapping::ventilation);
        ReadResult<List<InHand>> hand = onHand(in.optional("onHand"));
        ReadResult<List<StuffOnHand>> stuff = stuffOnHand(in.optional("stuffOnHand"));
        Steps steps = steps(in);
        ReadResult<WorkingTime> time = in.optional("workingTime").object(WorkingTimeMapping::read);
        ReadResult<Integer> people = CommonMembers.count(in.optional("people"), Limits.PEOPLE);
        ReadResult<Boolean> customary = in.optional("customaryUnits").flag();
        ReadResult<Assumptions> table = in.optional("edition").text().map(Assumptions::edition);
        ValueReader ownAt = in.optional("assumptions");
        ReadResult<List<Assumption>> own = AssumptionMapping.read(
                ownAt, table.isFaulty() ? Assumptions.standard() : table.orElse(Assumptions.standard()));
        return in.make(() -> {
            Studio.Builder studio = Studio.of(name.get());
            beater.ifGiven(studio::beater);
            vat.ifGiven(studio::vat);
            moulds.orElse(List.of()).forEach(studio::mould);
            press.ifGiven(studio::press);
            felts.ifGiven(studio::felts);
            dryers.orElse(List.of()).forEach(studio::dryer);
            room.ifGiven(studio::room);
            ventilation.ifGiven(studio::ventilation);
            hand.orElse(List.of()).forEach(one -> studio.onHand(one.fibre(), one.ovenDry()));
            stuff.orElse(List.of()).forEach(studio::stuffOnHand);
            steps.into(studio);
            time.ifGiven(studio::workingTime);
            people.ifGiven(studio::people);
            if (customary.orElse(false)) {
                studio.alsoCustomaryUnits();
            }
            Assumptions known = known(table, own);
            ownAt.writtenAs(own.orElse(List.of()), known.own());
            return studio.assumptions(known).build();
        });
    }

    public static void write(ObjectWriter out, Studio studio) {
        CommonMembers.name(out.member("name"), studio.name());
        studio.beater().ifPresent(one -> out.member("beater").object(in -> EquipmentMapping.beater(in, one)));
        studio.vat().ifPresent(one -> out.member("vat").object(in -> EquipmentMapping.vat(in, one)));
        if (!studio.moulds().isEmpty()) {
            out.member("moulds")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, studio.moulds(), "moulds"),
                            (item, one) -> item.object(in -> EquipmentMapping.mould(in, one)));
        }
        studio.press().ifPresent(one -> out.member("press").object(in -> EquipmentMapping.press(in, one)));
        studio.felts().ifPresent(one -> out.member("felts").object(in -> EquipmentMapping.felts(in, one)));
        if (!studio.dryers().isEmpty()) {
            out.member("dryers")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, studio.dryers(), "dryers"),
                            (item, one) -> item.object(in -> EquipmentMapping.dryer(in, one)));
        }
        out.member("room").object(in -> AirMapping.write(in, studio.room()));
        studio.ventilation()
                .ifPresent(one -> out.member("ventilation").object(in -> EquipmentMapping.ventilation(in, one)));
        onHand(out, studio.onHand());
        stuffOnHand(out, studio.stuffOnHand());
        out.member("scaleStep").quantity(studio.scaleStep());
        out.member("fineScaleStep").quantity(studio.fineScaleStep());
        out.member("jugStep").quantity(studio.jugStep());
        out.member("workingDay").quantity(studio.workingDay());
        studio.givenWorkingTime()
                .ifPresent(time -> out.member("workingTime").object(in -> WorkingTimeMapping.write(in, time)));
        if (studio.people() != 1) {
            out.member("people").count(studio.people());
        }
        out.member("customaryUnits").flag(studio.alsoCustomaryUnits());
        out.member("edition").text(studio.assumptions().edition());
        List<Assumption> own = studio.assumptions().own();
        if (!own.isEmpty()) {
            String edition = studio.assumptions().edition();
            Set<String> ids = AssumptionMapping.ids(edition);
            out.member("assumptions")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, own, "values of one's own"),
                            (item, one) -> item.object(in -> AssumptionMapping.write(in, one, ids, edition)));
        }
    }

    private static <T> ReadResult<List<T>> list(ValueReader at, Function<? super ObjectReader, ReadResult<T>> mapping) {
        return at.list(0, CommonMembers.MANY, one -> one.object(mapping));
    }

    private static Steps steps(ObjectReader in) {
        return new Steps(
                CommonMembers.within(in.optional("scaleStep"), Limits.SCALE_STEP, "step of the scale"),
                CommonMembers.within(in.optional("fineScaleStep"), Limits.SCALE_STEP, "step of the fine scale"),
                CommonMembers.within(in.optional("jugStep"), Limits.JUG_STEP, "step of the jug"),
                CommonMembers.within(in.optional("workingDay"), Limits.WORKING_DAY, "working day"));
    }

    private static ReadResult<List<InHand>> onHand(ValueReader at) {
        Names names = Names.ofOthers("fibre on hand");
        return list(at, in -> {
            ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
            names.add(fibre.map(Fibre::id));
            ReadResult<Amount<Mass>> ovenDry =
                    CommonMembers.within(in.required("ovenDry"), Limits.ON_HAND, "fibre on hand");
            return in.make(() -> new InHand(fibre.get(), ovenDry.get()));
        });
    }

    private static ReadResult<List<StuffOnHand>> stuffOnHand(ValueReader at) {
        Names names = Names.ofOthers("stuff on hand");
        return list(at, in -> {
            ReadResult<String> recipe = in.required("recipe").text();
            names.add(recipe);
            ReadResult<Amount<Mass>> ovenDry =
                    CommonMembers.within(in.required("ovenDry"), Limits.ON_HAND, "stuff on hand");
            ReadResult<Amount<Consistency>> consistency =
                    in.required("consistency").quantity(Kinds.CONSISTENCY);
            ReadResult<LocalDate> made = in.optional("made").date();
            return in.make(() -> new StuffOnHand(recipe.get(), ovenDry.get(), consistency.get(), made.optional()));
        });
    }

    private static void stuffOnHand(ObjectWriter out, List<StuffOnHand> stuff) {
        if (stuff.isEmpty()) {
            return;
        }
        out.member("stuffOnHand")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, stuff, "recipes"),
                        (item, one) -> item.object(in -> {
                            CommonMembers.name(in.member("recipe"), one.recipe());
                            in.member("ovenDry").quantity(one.ovenDry());
                            in.member("consistency").quantity(one.consistency());
                            one.made().ifPresent(day -> in.member("made").date(day));
                        }));
    }

    private static void onHand(ObjectWriter out, Map<Fibre, Amount<Mass>> onHand) {
        if (onHand.isEmpty()) {
            return;
        }
        out.member("onHand")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, onHand.entrySet(), "fibres"),
                        (item, one) -> item.object(in -> {
                            FibreMapping.write(in.member("fibre"), one.getKey());
                            in.member("ovenDry").quantity(one.getValue());
                        }));
    }

    private static Assumptions known(ReadResult<Assumptions> table, ReadResult<List<Assumption>> own) {
        return table.orElse(Assumptions.standard()).withAll(own.orElse(List.of()));
    }
}
