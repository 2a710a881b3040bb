package org.papermath.json;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Mould;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.vat.Vat;

/** A studio. */
final class StudioMapping {
    private record Steps(Got<Amount<Mass>> scale, Got<Amount<Mass>> fineScale, Got<Amount<Volume>> jug,
            Got<Amount<Time>> day) {
        void into(Studio.Builder studio) {
            scale.ifGiven(studio::scaleStep);
            fineScale.ifGiven(studio::fineScaleStep);
            jug.ifGiven(studio::jugStep);
            day.ifGiven(studio::workingDay);
        }
    }

    private record InHand(Fibre fibre, Amount<Mass> ovenDry) {
    }

    private StudioMapping() {
    }

    static Got<Studio> read(ObjectAt in) {
        return read(in, new Names("dryer"));
    }

    /** Reads a studio, and the names of its dryers for whoever refers to them. */
    static Got<Studio> read(ObjectAt in, Names dryerNames) {
        Got<String> name = Common.name(in);
        Got<Beater> beater = in.optional("beater").object(EquipmentMapping::beater);
        Got<Vat> vat = in.optional("vat").object(EquipmentMapping::vat);
        Names mouldNames = new Names("mould");
        Got<List<Mould>> moulds = list(in.optional("moulds"), one -> EquipmentMapping.mould(one, mouldNames));
        Got<Press> press = in.optional("press").object(EquipmentMapping::press);
        Got<Felts> felts = in.optional("felts").object(EquipmentMapping::felts);
        Got<List<Dryer>> dryers = list(in.optional("dryers"), one -> EquipmentMapping.dryer(one, dryerNames));
        Got<Air> room = in.optional("room").object(AirMapping::read);
        Got<List<InHand>> hand = onHand(in.optional("onHand"));
        Steps steps = steps(in);
        Got<Boolean> customary = in.optional("customaryUnits").flag();
        Got<Assumptions> table = in.optional("edition").text().map(Assumptions::edition);
        ValueAt ownAt = in.optional("assumptions");
        Got<List<Assumption>> own = AssumptionMapping.read(ownAt,
                table.isFaulty() ? Assumptions.standard() : table.orElse(Assumptions.standard()));
        return in.make(() -> {
            Studio.Builder studio = Studio.of(name.get());
            beater.ifGiven(studio::beater);
            vat.ifGiven(studio::vat);
            moulds.orElse(List.of()).forEach(studio::mould);
            press.ifGiven(studio::press);
            felts.ifGiven(studio::felts);
            dryers.orElse(List.of()).forEach(studio::dryer);
            room.ifGiven(studio::room);
            hand.orElse(List.of()).forEach(one -> studio.onHand(one.fibre(), one.ovenDry()));
            steps.into(studio);
            if (customary.orElse(false)) {
                studio.alsoCustomaryUnits();
            }
            Assumptions known = known(table, own);
            ownAt.writtenAs(own.orElse(List.of()), known.own());
            return studio.assumptions(known).build();
        });
    }

    static void write(ObjectOut out, Studio studio) {
        Common.name(out.member("name"), studio.name());
        studio.beater().ifPresent(one -> out.member("beater").object(in -> EquipmentMapping.beater(in, one)));
        studio.vat().ifPresent(one -> out.member("vat").object(in -> EquipmentMapping.vat(in, one)));
        if (!studio.moulds().isEmpty()) {
            out.member("moulds").list(Common.atMost(Common.MANY, studio.moulds(), "moulds"),
                    (item, one) -> item.object(in -> EquipmentMapping.mould(in, one)));
        }
        studio.press().ifPresent(one -> out.member("press").object(in -> EquipmentMapping.press(in, one)));
        studio.felts().ifPresent(one -> out.member("felts").object(in -> EquipmentMapping.felts(in, one)));
        if (!studio.dryers().isEmpty()) {
            out.member("dryers").list(Common.atMost(Common.MANY, studio.dryers(), "dryers"),
                    (item, one) -> item.object(in -> EquipmentMapping.dryer(in, one)));
        }
        out.member("room").object(in -> AirMapping.write(in, studio.room()));
        onHand(out, studio.onHand());
        out.member("scaleStep").quantity(studio.scaleStep());
        out.member("fineScaleStep").quantity(studio.fineScaleStep());
        out.member("jugStep").quantity(studio.jugStep());
        out.member("workingDay").quantity(studio.workingDay());
        out.member("customaryUnits").flag(studio.alsoCustomaryUnits());
        out.member("edition").text(studio.assumptions().edition());
        List<Assumption> own = studio.assumptions().own();
        if (!own.isEmpty()) {
            String edition = studio.assumptions().edition();
            Set<String> ids = AssumptionMapping.ids(edition);
            out.member("assumptions").list(Common.atMost(Common.MANY, own, "values of one's own"),
                    (item, one) -> item.object(in -> AssumptionMapping.write(in, one, ids, edition)));
        }
    }

    private static <T> Got<List<T>> list(ValueAt at, Function<? super ObjectAt, Got<T>> mapping) {
        return at.list(0, Common.MANY, one -> one.object(mapping));
    }

    private static Steps steps(ObjectAt in) {
        return new Steps(
                Common.within(in.optional("scaleStep"), Limits.SCALE_STEP, "step of the scale"),
                Common.within(in.optional("fineScaleStep"), Limits.SCALE_STEP, "step of the fine scale"),
                Common.within(in.optional("jugStep"), Limits.JUG_STEP, "step of the jug"),
                Common.within(in.optional("workingDay"), Limits.WORKING_DAY, "working day"));
    }

    private static Got<List<InHand>> onHand(ValueAt at) {
        Names names = new Names("fibre on hand");
        return list(at, in -> {
            Got<Fibre> fibre = FibreMapping.read(in.required("fibre"));
            names.add(fibre.map(Fibre::id));
            Got<Amount<Mass>> ovenDry = Common.within(in.required("ovenDry"), Limits.ON_HAND, "fibre on hand");
            return in.make(() -> new InHand(fibre.get(), ovenDry.get()));
        });
    }

    private static void onHand(ObjectOut out, Map<Fibre, Amount<Mass>> onHand) {
        if (onHand.isEmpty()) {
            return;
        }
        out.member("onHand").list(Common.atMost(Common.MANY, onHand.entrySet(), "fibres"),
                (item, one) -> item.object(in -> {
                    FibreMapping.write(in.member("fibre"), one.getKey());
                    in.member("ovenDry").quantity(one.getValue());
                }));
    }

    private static Assumptions known(Got<Assumptions> table, Got<List<Assumption>> own) {
        return table.orElse(Assumptions.standard()).withAll(own.orElse(List.of()));
    }
}
