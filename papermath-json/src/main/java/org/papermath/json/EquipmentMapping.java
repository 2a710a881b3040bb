package org.papermath.json;

import java.util.List;

import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;

import org.papermath.drying.Dryer;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/** The equipment of a studio. */
final class EquipmentMapping {
    /** The part of a press that is written as a member of its own. */
    private static final String JACK = "jack";
    static final String FAN_STACK = "fan stack";
    static final String BOARDS = "boards";
    static final String LOFT = "loft";
    static final String BLOTTERS = "blotters";

    private record Split(int across, int along, Amount<Length> strip) {
    }

    private EquipmentMapping() {
    }

    static Got<Beater> beater(ObjectAt in) {
        Got<String> name = Common.name(in);
        Got<Amount<Volume>> trough = Common.within(in.required("trough"), Limits.TROUGH, "trough volume");
        Got<Amount<Mass>> load = Common.within(in.required("ratedLoad"), Limits.RATED_LOAD, "rated load of the beater");
        return in.make(() -> Beater.of(name.get(), trough.get(), load.get()));
    }

    static void beater(ObjectOut out, Beater beater) {
        Common.name(out.member("name"), beater.name());
        out.member("trough").quantity(beater.trough());
        out.member("ratedLoad").quantity(beater.ratedLoad());
    }

    static Got<Vat> vat(ObjectAt in) {
        Got<String> name = Common.name(in);
        Got<Amount<Volume>> volume = Common.within(in.required("volume"), Limits.VAT_VOLUME,
                "working volume of the vat");
        Got<Amount<Temperature>> temperature = Common.within(in.optional("temperature"), Limits.VAT_TEMPERATURE,
                "vat temperature");
        Got<List<Amount<Length>>> inside = Common.sides(in.optional("inside"), Limits.VAT_SIDE, "vat inside");
        return in.make(() -> {
            Vat vat = Vat.of(name.get(), volume.get());
            Vat warm = temperature.optional().map(vat::at).orElse(vat);
            return inside.optional().map(two -> warm.inside(two.get(0), two.get(1))).orElse(warm);
        });
    }

    static void vat(ObjectOut out, Vat vat) {
        Common.name(out.member("name"), vat.name());
        out.member("volume").quantity(vat.workingVolume());
        out.member("temperature").quantity(vat.temperature());
        vat.width().ifPresent(width -> Common.sides(out.member("inside"), width, vat.length().orElseThrow()));
    }

    static Got<Mould> mould(ObjectAt in, Names names) {
        Got<String> name = names.add(in.required("name").text());
        Got<List<Amount<Length>>> opening = Common.sides(in.required("opening"), Limits.MOULD_SIDE, "deckle opening");
        Got<Split> split = in.optional("split").object(EquipmentMapping::split);
        return in.make(() -> {
            Deckle whole = Deckle.of(opening.get().get(0), opening.get().get(1));
            return Mould.of(name.get(), split.optional().map(by -> whole.split(by.across(), by.along(), by.strip()))
                    .orElse(whole));
        });
    }

    private static Got<Split> split(ObjectAt in) {
        Got<Integer> across = Common.count(in.required("across"), Limits.DECKLE_SPLIT);
        Got<Integer> along = Common.count(in.required("along"), Limits.DECKLE_SPLIT);
        Got<Amount<Length>> strip = in.required("strip").quantity(Kinds.LENGTH);
        return in.make(() -> new Split(across.get(), along.get(), strip.get()));
    }

    static void mould(ObjectOut out, Mould mould) {
        Deckle deckle = mould.deckle();
        Common.text(out.member("name"), mould.name());
        Common.sides(out.member("opening"), deckle.width(), deckle.height());
        ValueOut parted = out.member("split");
        if (deckle.count() > 1 || deckle.strip().si() != 0 || parted.keeps()) {
            parted.object(split -> {
                split.member("across").count(deckle.across());
                split.member("along").count(deckle.along());
                split.member("strip").quantity(deckle.strip());
            });
        }
    }

    static Got<Press> press(ObjectAt in) {
        Got<String> name = Common.name(in);
        Got<Amount<Force>> jack = Common.within(in.required(JACK), Limits.PRESS_RATING, "rating of the jack");
        Got<List<Amount<Length>>> platen = Common.sides(in.required("platen"), Limits.PLATEN_SIDE, "side of the platen");
        Names names = new Names("part of the press");
        names.add(Got.of(in.optional(JACK), JACK));
        Got<List<Press.Part>> parts = in.optional("parts")
                .list(0, Common.MANY, one -> one.object(part -> part(part, names)));
        Got<Amount<Length>> daylight = Common.within(in.optional("daylight"), Limits.DAYLIGHT, "daylight of the press");
        return in.make(() -> {
            Press press = Press.of(name.get(), jack.get(), platen.get().get(0), platen.get().get(1));
            for (Press.Part part : parts.orElse(List.of())) {
                press = press.part(part.name(), part.rating());
            }
            Press all = press;
            return daylight.optional().map(all::daylight).orElse(all);
        });
    }

    private static Got<Press.Part> part(ObjectAt in, Names names) {
        Got<String> name = names.add(in.required("name").text());
        Got<Amount<Force>> rating = Common.within(in.required("rating"), Limits.PRESS_RATING, "rating of the part");
        return in.make(() -> new Press.Part(name.get(), rating.get()));
    }

    static void press(ObjectOut out, Press press) {
        Common.name(out.member("name"), press.name());
        press.parts().stream().filter(part -> part.name().equals(JACK))
                .forEach(jack -> out.member(JACK).quantity(jack.rating()));
        Common.sides(out.member("platen"), press.platenWidth(), press.platenLength());
        List<Press.Part> others = press.parts().stream().filter(part -> !part.name().equals(JACK)).toList();
        if (!others.isEmpty()) {
            out.member("parts").list(Common.atMost(Common.MANY, others, "parts of the press"),
                    (item, part) -> item.object(members -> {
                        Common.text(members.member("name"), part.name());
                        members.member("rating").quantity(part.rating());
                    }));
        }
        press.daylight().ifPresent(height -> out.member("daylight").quantity(height));
    }

    static Got<Felts> felts(ObjectAt in) {
        Got<List<Amount<Length>>> size = Common.sides(in.required("size"), Limits.FELT_SIDE, "side of the felts");
        Got<Amount<Grammage>> grammage = Common.within(in.required("grammage"), Limits.FELT_GRAMMAGE,
                "dry grammage of the felt");
        Got<Integer> count = Common.count(in.required("count"), Limits.FELTS);
        return in.make(() -> Felts.of(size.get().get(0), size.get().get(1), grammage.get(), count.get()));
    }

    static void felts(ObjectOut out, Felts felts) {
        Common.sides(out.member("size"), felts.width(), felts.length());
        out.member("grammage").quantity(felts.dryGrammage());
        out.member("count").count(felts.count());
    }

    static Got<Dryer> dryer(ObjectAt in, Names names) {
        Got<String> kind = in.required("kind").choice(List.of(FAN_STACK, BOARDS, LOFT, BLOTTERS), word -> word);
        Got<String> name = names.add(Common.name(in));
        Got<Integer> capacity = Common.count(in.required("capacity"), Limits.DRYER_CAPACITY);
        String word = kind.isFaulty() || !kind.isGiven() ? "" : kind.get();
        // Of a dryer of no known kind nobody can say which members it has.
        Got<Amount<VolumeFlow>> flow = Common.within(member(in, "freeAirFlow", word.equals(FAN_STACK),
                word.isEmpty()), Limits.FREE_AIR_FLOW, "free-air flow of the fan");
        Got<Integer> spur = Common.count(member(in, "sheetsInSpur", word.equals(LOFT), word.isEmpty()), Limits.SPUR);
        return in.make(() -> switch (word) {
            case FAN_STACK -> Dryer.fanStack(name.get(), flow.get(), capacity.get());
            case LOFT -> Dryer.loft(name.get(), spur.get(), capacity.get());
            case BOARDS -> Dryer.boards(name.get(), capacity.get());
            default -> Dryer.blotters(name.get(), capacity.get());
        });
    }

    /** Asks for a member that must be there for one kind and must not for the others. */
    private static ValueAt member(ObjectAt in, String name, boolean wanted, boolean unknown) {
        return wanted ? in.required(name) : unknown ? in.optional(name) : in.unasked();
    }

    static void dryer(ObjectOut out, Dryer dryer) {
        out.member("kind").text(kind(dryer));
        Common.name(out.member("name"), dryer.name());
        out.member("capacity").count(dryer.capacity());
        if (dryer instanceof Dryer.FanStack stack) {
            out.member("freeAirFlow").quantity(stack.freeAirFlow());
        } else if (dryer instanceof Dryer.Loft loft) {
            out.member("sheetsInSpur").count(loft.sheetsInSpur());
        }
    }

    private static String kind(Dryer dryer) {
        return dryer instanceof Dryer.FanStack ? FAN_STACK : dryer instanceof Dryer.Loft ? LOFT
                : dryer instanceof Dryer.Boards ? BOARDS : BLOTTERS;
    }
}
