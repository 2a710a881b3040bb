package org.papermath.json.mapping;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Press;
import org.papermath.press.RamGauge;
import org.papermath.press.Screw;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;

/** The equipment of a studio. */
public final class EquipmentMapping {
    /** The part of a press that is written as a member of its own. */
    private static final String JACK = "jack";

    public static final String FAN_STACK = "fan stack";
    public static final String BOARDS = "boards";
    public static final String LOFT = "loft";
    public static final String BLOTTERS = "blotters";

    private record Split(int across, int along, Amount<Length> strip) {}

    private EquipmentMapping() {}

    public static ReadResult<Beater> beater(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Amount<Volume>> trough = CommonMembers.within(in.required("trough"), Limits.TROUGH, "trough volume");
        ReadResult<Amount<Mass>> load =
                CommonMembers.within(in.required("ratedLoad"), Limits.RATED_LOAD, "rated load of the beater");
        return in.make(() -> Beater.of(name.get(), trough.get(), load.get()));
    }

    public static void beater(ObjectWriter out, Beater beater) {
        CommonMembers.name(out.member("name"), beater.name());
        out.member("trough").quantity(beater.trough());
        out.member("ratedLoad").quantity(beater.ratedLoad());
    }

    public static ReadResult<Vat> vat(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Amount<Volume>> volume =
                CommonMembers.within(in.required("volume"), Limits.VAT_VOLUME, "working volume of the vat");
        ReadResult<Amount<Temperature>> temperature =
                CommonMembers.within(in.optional("temperature"), Limits.VAT_TEMPERATURE, "vat temperature");
        ReadResult<List<Amount<Length>>> inside =
                CommonMembers.sides(in.optional("inside"), Limits.VAT_SIDE, "vat inside");
        ReadResult<Boolean> strainer = in.optional("strainer").flag();
        ReadResult<Amount<Volume>> runDown =
                CommonMembers.within(in.optional("runDownTo"), Limits.VAT_VOLUME, "level the vat is run down to");
        return in.make(() -> {
            Vat vat = Vat.of(name.get(), volume.get());
            Vat warm = temperature.optional().map(vat::at).orElse(vat);
            Vat whole = inside.optional()
                    .map(two -> warm.inside(two.get(0), two.get(1)))
                    .orElse(warm);
            Vat bailed = strainer.orElse(true) ? whole : whole.withoutStrainer();
            return runDown.optional().map(bailed::runDownTo).orElse(bailed);
        });
    }

    public static void vat(ObjectWriter out, Vat vat) {
        CommonMembers.name(out.member("name"), vat.name());
        out.member("volume").quantity(vat.workingVolume());
        out.member("temperature").quantity(vat.temperature());
        vat.width()
                .ifPresent(width -> CommonMembers.sides(
                        out.member("inside"), width, vat.length().orElseThrow()));
        ValueWriter strainer = out.member("strainer");
        if (!vat.isStrained() || strainer.keeps()) {
            strainer.flag(vat.isStrained());
        }
        vat.runDown().ifPresent(level -> out.member("runDownTo").quantity(level));
    }

    public static ReadResult<Mould> mould(ObjectReader in, Names names) {
        ReadResult<String> name = names.add(in.required("name").text());
        boolean shaped = in.has("outline");
        if (shaped && in.has("opening")) {
            in.exactlyOne("opening", "outline");
        }
        ReadResult<List<Amount<Length>>> opening = CommonMembers.sides(
                shaped ? in.optional("opening") : in.required("opening"), Limits.MOULD_SIDE, "deckle opening");
        ReadResult<Outline> outline =
                OutlineMapping.read(in.optional("outline"), Limits.MOULD_SIDE, "the outline of the deckle");
        ReadResult<Split> split = in.optional("split").object(EquipmentMapping::split);
        ReadResult<Amount<Length>> depth =
                CommonMembers.within(in.optional("depth"), Limits.DECKLE_DEPTH, "depth of the deckle");
        ReadResult<Integer> count = CommonMembers.count(in.optional("inTurn"), Limits.MOULDS_IN_TURN);
        return in.make(() -> {
            Deckle whole = outline.isGiven()
                    ? split.optional()
                            .map(by -> Deckle.shaped(outline.get(), by.across(), by.along(), by.strip()))
                            .orElseGet(() -> Deckle.shaped(outline.get()))
                    : plain(opening.get(), split);
            return Mould.of(name.get(), depth.optional().map(whole::deep).orElse(whole))
                    .inTurn(count.orElse(1));
        });
    }

    private static Deckle plain(List<Amount<Length>> opening, ReadResult<Split> split) {
        Deckle one = Deckle.of(opening.get(0), opening.get(1));
        return split.optional()
                .map(by -> one.split(by.across(), by.along(), by.strip()))
                .orElse(one);
    }

    private static ReadResult<Split> split(ObjectReader in) {
        ReadResult<Integer> across = CommonMembers.count(in.required("across"), Limits.DECKLE_SPLIT);
        ReadResult<Integer> along = CommonMembers.count(in.required("along"), Limits.DECKLE_SPLIT);
        ReadResult<Amount<Length>> strip = in.required("strip").quantity(Kinds.LENGTH);
        return in.make(() -> new Split(across.get(), along.get(), strip.get()));
    }

    public static void mould(ObjectWriter out, Mould mould) {
        Deckle deckle = mould.deckle();
        CommonMembers.text(out.member("name"), mould.name());
        deckle.outline()
                .ifPresentOrElse(
                        outline -> OutlineMapping.write(out.member("outline"), outline),
                        () -> CommonMembers.sides(out.member("opening"), deckle.width(), deckle.height()));
        ValueWriter parted = out.member("split");
        if (deckle.count() > 1 || deckle.strip().si() != 0 || parted.keeps()) {
            parted.object(split -> {
                split.member("across").count(deckle.across());
                split.member("along").count(deckle.along());
                split.member("strip").quantity(deckle.strip());
            });
        }
        deckle.depth().ifPresent(depth -> out.member("depth").quantity(depth));
        ValueWriter inTurn = out.member("inTurn");
        if (mould.count() > 1 || inTurn.keeps()) {
            inTurn.count(mould.count());
        }
    }

    public static ReadResult<Press> press(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Amount<Force>> jack =
                CommonMembers.within(in.required(JACK), Limits.PRESS_RATING, "rating of the jack");
        ReadResult<List<Amount<Length>>> platen =
                CommonMembers.sides(in.required("platen"), Limits.PLATEN_SIDE, "side of the platen");
        Names names = new Names("part of the press");
        names.add(ReadResult.of(in.optional(JACK), JACK));
        ReadResult<List<Press.Part>> parts =
                in.optional("parts").list(0, CommonMembers.MANY, one -> one.object(part -> part(part, names)));
        ReadResult<Amount<Length>> daylight =
                CommonMembers.within(in.optional("daylight"), Limits.DAYLIGHT, "daylight of the press");
        ReadResult<Integer> pressings = CommonMembers.count(in.optional("pressings"), Limits.PRESSINGS);
        ReadResult<RamGauge> ram = in.optional("ram").object(EquipmentMapping::ram);
        ReadResult<Turned> screw = in.optional("screw").object(EquipmentMapping::screw);
        return in.make(() -> {
            Press press = Press.of(
                            name.get(),
                            jack.get(),
                            platen.get().get(0),
                            platen.get().get(1))
                    .pressings(pressings.orElse(1));
            for (Press.Part part : parts.orElse(List.of())) {
                press = press.part(part.name(), part.rating());
            }
            press = daylight.optional().map(press::daylight).orElse(press);
            press = ram.optional().map(press::ram).orElse(press);
            Press all = press;
            return screw.optional()
                    .map(turned -> all.screw(turned.screw(), turned.lever()))
                    .orElse(all);
        });
    }

    private static ReadResult<RamGauge> ram(ObjectReader in) {
        ReadResult<Amount<Length>> diameter =
                CommonMembers.within(in.required("diameter"), Limits.RAM_DIAMETER, "diameter of the ram");
        ReadResult<Amount<Force>> takenUp = in.optional("takenUp").quantity(Kinds.FORCE);
        return in.make(() -> {
            RamGauge ram = RamGauge.of(diameter.get());
            return takenUp.optional().map(ram::takingUp).orElse(ram);
        });
    }

    /** A screw with the lever on it. */
    private record Turned(Screw screw, Lever lever) {}

    private static ReadResult<Turned> screw(ObjectReader in) {
        ReadResult<Amount<Length>> lead =
                CommonMembers.aboveZero(in.required("lead"), Kinds.LENGTH, "lead of the screw");
        ReadResult<Amount<Length>> diameter =
                CommonMembers.aboveZero(in.required("meanDiameter"), Kinds.LENGTH, "mean diameter of the screw");
        ReadResult<Amount<Share>> friction = in.optional("friction").quantity(Kinds.SHARE);
        ReadResult<Amount<Length>> collar =
                CommonMembers.aboveZero(in.optional("collar"), Kinds.LENGTH, "mean diameter of the collar");
        ReadResult<Amount<Length>> lever =
                CommonMembers.aboveZero(in.required("lever"), Kinds.LENGTH, "length of the lever");
        ReadResult<Integer> people = CommonMembers.count(in.optional("people"), Limits.AT_THE_LEVER);
        ReadResult<Amount<Force>> hand =
                CommonMembers.aboveZero(in.optional("handForce"), Kinds.FORCE, "force of a hand");
        return in.make(() -> {
            Screw bare = friction.optional().isPresent()
                    ? Screw.of(lead.get(), diameter.get(), friction.get())
                    : Screw.steel(lead.get(), diameter.get());
            Lever pulled = hand.optional().isPresent()
                    ? Lever.of(lever.get(), people.orElse(1), hand.get())
                    : Lever.of(lever.get(), people.orElse(1));
            return new Turned(collar.optional().map(bare::collar).orElse(bare), pulled);
        });
    }

    private static ReadResult<Press.Part> part(ObjectReader in, Names names) {
        ReadResult<String> name = names.add(in.required("name").text());
        ReadResult<Amount<Force>> rating =
                CommonMembers.within(in.required("rating"), Limits.PRESS_RATING, "rating of the part");
        return in.make(() -> new Press.Part(name.get(), rating.get()));
    }

    public static void press(ObjectWriter out, Press press) {
        CommonMembers.name(out.member("name"), press.name());
        press.parts().stream()
                .filter(part -> part.name().equals(JACK))
                .forEach(jack -> out.member(JACK).quantity(jack.rating()));
        CommonMembers.sides(out.member("platen"), press.platenWidth(), press.platenLength());
        List<Press.Part> others =
                press.parts().stream().filter(part -> !part.name().equals(JACK)).toList();
        if (!others.isEmpty()) {
            out.member("parts")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, others, "parts of the press"),
                            (item, part) -> item.object(members -> {
                                CommonMembers.text(members.member("name"), part.name());
                                members.member("rating").quantity(part.rating());
                            }));
        }
        press.daylight().ifPresent(height -> out.member("daylight").quantity(height));
        ValueWriter pressings = out.member("pressings");
        if (press.pressings() != 1 || pressings.keeps()) {
            pressings.count(press.pressings());
        }
        press.ram()
                .ifPresent(ram -> out.member("ram").object(members -> {
                    members.member("diameter").quantity(ram.diameter());
                    if (ram.takenUp().si() != 0) {
                        members.member("takenUp").quantity(ram.takenUp());
                    }
                }));
        press.screw()
                .ifPresent(screw -> out.member("screw").object(members -> {
                    members.member("lead").quantity(screw.lead());
                    members.member("meanDiameter").quantity(screw.meanDiameter());
                    members.member("friction").quantity(screw.friction());
                    if (screw.collarDiameter().si() != 0) {
                        members.member("collar").quantity(screw.collarDiameter());
                    }
                    press.lever().ifPresent(lever -> {
                        members.member("lever").quantity(lever.length());
                        members.member("people").count(lever.people());
                        members.member("handForce").quantity(lever.handForce());
                    });
                }));
    }

    public static ReadResult<Felts> felts(ObjectReader in) {
        ReadResult<List<Amount<Length>>> size =
                CommonMembers.sides(in.required("size"), Limits.FELT_SIDE, "side of the felts");
        ReadResult<Amount<Grammage>> grammage =
                CommonMembers.within(in.required("grammage"), Limits.FELT_GRAMMAGE, "dry grammage of the felt");
        ReadResult<Amount<Length>> thickness =
                CommonMembers.within(in.optional("thickness"), Limits.FELT_THICKNESS, "thickness of the felt");
        ReadResult<Integer> count = CommonMembers.count(in.required("count"), Limits.FELTS);
        return in.make(() -> {
            Felts felts = Felts.of(size.get().get(0), size.get().get(1), grammage.get(), count.get());
            return thickness.optional().map(felts::thickness).orElse(felts);
        });
    }

    public static void felts(ObjectWriter out, Felts felts) {
        CommonMembers.sides(out.member("size"), felts.width(), felts.length());
        out.member("grammage").quantity(felts.dryGrammage());
        felts.thickness().ifPresent(thick -> out.member("thickness").quantity(thick));
        out.member("count").count(felts.count());
    }

    public static ReadResult<Dryer> dryer(ObjectReader in, Names names) {
        ReadResult<String> kind = in.required("kind").choice(List.of(FAN_STACK, BOARDS, LOFT, BLOTTERS), word -> word);
        ReadResult<String> name = names.add(CommonMembers.name(in));
        ReadResult<Integer> capacity = CommonMembers.count(in.required("capacity"), Limits.DRYER_CAPACITY);
        String word = kind.isFaulty() || !kind.isGiven() ? "" : kind.get();
        // Of a dryer of no known kind nobody can say which members it has.
        ReadResult<Amount<VolumeFlow>> flow = CommonMembers.within(
                member(in, "freeAirFlow", word.equals(FAN_STACK), word.isEmpty()),
                Limits.FREE_AIR_FLOW,
                "free-air flow of the fan");
        ReadResult<Integer> spur =
                CommonMembers.count(member(in, "sheetsInSpur", word.equals(LOFT), word.isEmpty()), Limits.SPUR);
        ReadResult<Amount<Mass>> weight = CommonMembers.within(
                word.equals(FAN_STACK) || word.isEmpty() ? in.optional("weight") : in.unasked(),
                Limits.STACK_WEIGHT,
                "weight on the stack");
        ReadResult<List<Amount<Length>>> sides = CommonMembers.sides(
                word.equals(LOFT) ? in.unasked() : in.optional("layer"),
                Limits.DRYER_SIDE,
                "side of a layer of the dryer");
        return in.make(() -> {
            Optional<Dryer.Layer> layer = sides.optional().map(both -> new Dryer.Layer(both.get(0), both.get(1)));
            return switch (word) {
                case FAN_STACK -> new Dryer.FanStack(name.get(), flow.get(), capacity.get(), weight.optional(), layer);
                case LOFT -> Dryer.loft(name.get(), spur.get(), capacity.get());
                case BOARDS -> new Dryer.Boards(name.get(), capacity.get(), layer);
                default -> new Dryer.Blotters(name.get(), capacity.get(), layer);
            };
        });
    }

    public static ReadResult<Ventilation> ventilation(ObjectReader in) {
        ReadResult<Amount<Volume>> volume =
                CommonMembers.within(in.required("volume"), Limits.ROOM_VOLUME, "volume of the room");
        ReadResult<Amount<Rate>> changes =
                CommonMembers.within(in.required("airChanges"), Limits.AIR_CHANGES, "air changes of the room");
        return in.make(() -> new Ventilation(volume.get(), changes.get()));
    }

    public static void ventilation(ObjectWriter out, Ventilation ventilation) {
        out.member("volume").quantity(ventilation.volume());
        out.member("airChanges").quantity(ventilation.airChanges());
    }

    /** Asks for a member that must be there for one kind and must not for the others. */
    private static ValueReader member(ObjectReader in, String name, boolean wanted, boolean unknown) {
        return wanted ? in.required(name) : unknown ? in.optional(name) : in.unasked();
    }

    public static void dryer(ObjectWriter out, Dryer dryer) {
        out.member("kind").text(kind(dryer));
        CommonMembers.name(out.member("name"), dryer.name());
        out.member("capacity").count(dryer.capacity());
        dryer.layer().ifPresent(one -> CommonMembers.sides(out.member("layer"), one.width(), one.length()));
        if (dryer instanceof Dryer.FanStack stack) {
            out.member("freeAirFlow").quantity(stack.freeAirFlow());
            stack.weight().ifPresent(one -> out.member("weight").quantity(one));
        } else if (dryer instanceof Dryer.Loft loft) {
            out.member("sheetsInSpur").count(loft.sheetsInSpur());
        }
    }

    private static String kind(Dryer dryer) {
        return dryer instanceof Dryer.FanStack
                ? FAN_STACK
                : dryer instanceof Dryer.Loft ? LOFT : dryer instanceof Dryer.Boards ? BOARDS : BLOTTERS;
    }
}
