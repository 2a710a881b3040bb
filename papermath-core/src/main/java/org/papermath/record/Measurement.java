package org.papermath.record;

import java.util.Objects;
import java.util.Optional;
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
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.SolutionStrength;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.Restraint;

/**
 * Readings that belong together, as they were taken: nothing is worked out, converted or rounded here. Immutable.
 */
public sealed interface Measurement {
    /**
     * A sample of fibre as bought, weighed and dried in an oven to constant mass.
     *
     * @param fibre the fibre
     * @param form the form it was bought in
     * @param asBought the mass as bought
     * @param dried the mass after drying
     */
    record MoistureSample(Fibre fibre, BoughtFibre.Form form, Reading<Mass> asBought, Reading<Mass> dried)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param fibre the fibre
         * @param form the form it was bought in
         * @param asBought the mass as bought
         * @param dried the mass after drying
         */
        public MoistureSample {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(form, "form");
            Objects.requireNonNull(asBought, "asBought");
            Objects.requireNonNull(dried, "dried");
        }

        /**
         * Takes the usual form of the fibre.
         *
         * @param fibre the fibre
         * @param asBought the mass as bought
         * @param dried the mass after drying
         */
        public MoistureSample(Fibre fibre, Reading<Mass> asBought, Reading<Mass> dried) {
            this(fibre, BoughtFibre.Form.usual(Objects.requireNonNull(fibre, "fibre")), asBought, dried);
        }

        @Override
        public String toString() {
            return "moisture of " + fibre + " as " + form.words() + ": " + asBought + " as bought, " + dried + " dried";
        }
    }

    /**
     * Fibre weighed for the batch.
     *
     * @param fibre the fibre
     * @param asBought the mass as bought
     */
    record FibreWeighed(Fibre fibre, Reading<Mass> asBought) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param fibre the fibre
         * @param asBought the mass as bought
         */
        public FibreWeighed {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(asBought, "asBought");
        }

        @Override
        public String toString() {
            return "fibre weighed: " + asBought + " of " + fibre + " as bought";
        }
    }

    /**
     * A load of the beater.
     *
     * @param stock the volume of fibre and water together
     * @param time how long it was beaten
     * @param filled the fibre over that of a full load
     */
    record Load(Reading<Volume> stock, Reading<Time> time, Amount<Share> filled) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param stock the volume of fibre and water together
         * @param time how long it was beaten
         * @param filled the fibre over that of a full load
         */
        public Load {
            Objects.requireNonNull(stock, "stock");
            Objects.requireNonNull(time, "time");
            Objects.requireNonNull(filled, "filled");
        }

        /**
         * Notes a full load.
         *
         * @param stock the volume of fibre and water together
         * @param time how long it was beaten
         */
        public Load(Reading<Volume> stock, Reading<Time> time) {
            this(stock, time, Kinds.SHARE.of(100, "%"));
        }

        @Override
        public String toString() {
            return "load of the beater: " + stock + ", " + time + ", " + filled + " of a full one";
        }
    }

    /**
     * A Schopper–Riegler number read after a beating time, zero for unbeaten stock.
     *
     * @param beating the time so far
     * @param number the number
     */
    record NumberRead(Reading<Time> beating, Reading<SchopperRiegler> number) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param beating the time so far
         * @param number the number
         */
        public NumberRead {
            Objects.requireNonNull(beating, "beating");
            Objects.requireNonNull(number, "number");
        }

        @Override
        public String toString() {
            return "drainability after " + beating + ": " + number;
        }
    }

    /**
     * A Canadian Standard freeness read after a beating time, zero for unbeaten stock. It is kept as it was measured.
     *
     * @param beating the time so far
     * @param freeness the freeness
     */
    record FreenessRead(Reading<Time> beating, Reading<CanadianFreeness> freeness) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param beating the time so far
         * @param freeness the freeness
         */
        public FreenessRead {
            Objects.requireNonNull(beating, "beating");
            Objects.requireNonNull(freeness, "freeness");
        }

        @Override
        public String toString() {
            return "freeness after " + beating + ": " + freeness;
        }
    }

    /**
     * A sheet timed on the mould until the sheen has gone.
     *
     * @param time the time
     * @param depth the depth of stock at the start
     * @param stock oven-dry fibre in a litre of that stock
     * @param water the temperature of the vat
     */
    record TimedSheet(
            Reading<Time> time, Reading<Length> depth, Reading<FibreConcentration> stock, Amount<Temperature> water)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param time the time
         * @param depth the depth of stock at the start
         * @param stock oven-dry fibre in a litre of that stock
         * @param water the temperature of the vat
         */
        public TimedSheet {
            Objects.requireNonNull(time, "time");
            Objects.requireNonNull(depth, "depth");
            Objects.requireNonNull(stock, "stock");
            Objects.requireNonNull(water, "water");
        }

        @Override
        public String toString() {
            return "sheet timed: drained in " + time + ", " + depth + " deep, of " + stock + ", water " + water;
        }
    }

    /**
     * The stock in the vat.
     *
     * @param volume the volume
     */
    record VatFilled(Reading<Volume> volume) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param volume the volume
         */
        public VatFilled {
            Objects.requireNonNull(volume, "volume");
        }

        @Override
        public String toString() {
            return "vat filled: " + volume;
        }
    }

    /**
     * A litre of what drips off the mould and a litre of the stirred vat, both dried.
     *
     * @param dripping oven-dry solids in a litre that drips off
     * @param vat oven-dry solids in a litre of the vat
     */
    record WaterDried(Reading<FibreConcentration> dripping, Reading<FibreConcentration> vat) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param dripping oven-dry solids in a litre that drips off
         * @param vat oven-dry solids in a litre of the vat
         */
        public WaterDried {
            Objects.requireNonNull(dripping, "dripping");
            Objects.requireNonNull(vat, "vat");
        }

        @Override
        public String toString() {
            return "water dried: dripping " + dripping + ", vat " + vat;
        }
    }

    /**
     * One sheet followed through couching and pressing to the oven.
     *
     * @param couched the mass as couched
     * @param pressed the mass out of the press, if it was weighed there
     * @param ovenDry the mass out of the oven
     * @param width the width as couched
     * @param height the height as couched
     */
    record WeighedSheet(
            Reading<Mass> couched,
            Optional<Reading<Mass>> pressed,
            Reading<Mass> ovenDry,
            Reading<Length> width,
            Reading<Length> height)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param couched the mass as couched
         * @param pressed the mass out of the press, if it was weighed there
         * @param ovenDry the mass out of the oven
         * @param width the width as couched
         * @param height the height as couched
         */
        public WeighedSheet {
            Objects.requireNonNull(couched, "couched");
            Objects.requireNonNull(pressed, "pressed");
            Objects.requireNonNull(ovenDry, "ovenDry");
            Objects.requireNonNull(width, "width");
            Objects.requireNonNull(height, "height");
        }

        @Override
        public String toString() {
            return "sheet weighed: couched " + couched
                    + pressed.map(one -> ", pressed " + one).orElse("") + ", oven-dry " + ovenDry + ", " + width
                    + " by " + height;
        }
    }

    /**
     * How the post was pressed.
     *
     * @param force the force of the press, if it was read
     * @param pressure the pressure on the sheets
     * @param hold the time at load
     */
    record Pressed(Optional<Reading<Force>> force, Reading<SheetPressure> pressure, Reading<Time> hold)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param force the force of the press, if it was read
         * @param pressure the pressure on the sheets
         * @param hold the time at load
         */
        public Pressed {
            Objects.requireNonNull(force, "force");
            Objects.requireNonNull(pressure, "pressure");
            Objects.requireNonNull(hold, "hold");
        }

        @Override
        public String toString() {
            return "pressed: " + force.map(one -> one + ", ").orElse("") + pressure + " on the sheets, for " + hold;
        }
    }

    /**
     * Sheets or pieces counted at a step.
     *
     * @param step the step
     * @param handled how many went through it, the rejected included; 1 or more
     * @param rejected how many of them were rejected
     */
    record Count(Step step, int handled, int rejected) implements Measurement {
        /**
         * Checks the counts.
         *
         * @param step the step
         * @param handled how many went through it, the rejected included; 1 or more
         * @param rejected how many of them were rejected
         * @throws Refused if none was handled, or the rejected are fewer than none or more than all
         */
        public Count {
            Objects.requireNonNull(step, "step");
            if (handled < 1 || rejected < 0 || rejected > handled) {
                throw Refused.of(
                        "record.count",
                        step.word() + ": " + rejected + " rejected of " + handled
                                + " given; count 1 or more, and no more rejects than that.",
                        "step",
                        step.word(),
                        "handled",
                        handled,
                        "rejected",
                        rejected);
            }
        }

        @Override
        public String toString() {
            return "counted at " + step.word() + ": " + handled + ", " + rejected + " of them rejected";
        }
    }

    /**
     * Sheets weighed before and after a time in the dryer.
     *
     * @param before their mass when it began, all together
     * @param after their mass when it ended
     * @param time the time between
     * @param ovenDry their oven-dry mass, all together
     * @param faces the area of one face of all of them
     * @param changes changes of blotters in that time; 0 where there are none
     * @param air the air of the room
     */
    record Dried(
            Reading<Mass> before,
            Reading<Mass> after,
            Reading<Time> time,
            Reading<Mass> ovenDry,
            Amount<Area> faces,
            int changes,
            Air air)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param before their mass when it began, all together
         * @param after their mass when it ended
         * @param time the time between
         * @param ovenDry their oven-dry mass, all together
         * @param faces the area of one face of all of them
         * @param changes changes of blotters in that time; 0 where there are none
         * @param air the air of the room
         */
        public Dried {
            Objects.requireNonNull(before, "before");
            Objects.requireNonNull(after, "after");
            Objects.requireNonNull(time, "time");
            Objects.requireNonNull(ovenDry, "ovenDry");
            Objects.requireNonNull(faces, "faces");
            Objects.requireNonNull(air, "air");
        }

        @Override
        public String toString() {
            return "dried from " + before + " to " + after + " in " + time + ", oven-dry " + ovenDry + ", " + faces
                    + ", " + changes + (changes == 1 ? " change" : " changes") + " of blotters, in " + air;
        }
    }

    /**
     * A finished sheet on scale and ruler.
     *
     * @param width its width, across
     * @param height its height, along
     * @param mass its mass in the air
     * @param caliper its caliper, if it was measured
     * @param ovenDry its mass out of the oven, if it was dried once more
     * @param air the air it had lain in
     */
    record Finished(
            Reading<Length> width,
            Reading<Length> height,
            Reading<Mass> mass,
            Optional<Reading<Length>> caliper,
            Optional<Reading<Mass>> ovenDry,
            Air air)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param width its width, across
         * @param height its height, along
         * @param mass its mass in the air
         * @param caliper its caliper, if it was measured
         * @param ovenDry its mass out of the oven, if it was dried once more
         * @param air the air it had lain in
         */
        public Finished {
            Objects.requireNonNull(width, "width");
            Objects.requireNonNull(height, "height");
            Objects.requireNonNull(mass, "mass");
            Objects.requireNonNull(caliper, "caliper");
            Objects.requireNonNull(ovenDry, "ovenDry");
            Objects.requireNonNull(air, "air");
        }

        @Override
        public String toString() {
            return "finished piece: " + width + " by " + height + ", " + mass
                    + caliper.map(one -> ", " + one + " thick").orElse("")
                    + ovenDry.map(one -> ", oven-dry " + one).orElse("") + ", in " + air;
        }
    }

    /**
     * Marks on a sheet or strip before and after drying.
     *
     * @param restraint what held it while it dried
     * @param wetAlong the distance of the marks along the mould, wet
     * @param dryAlong the same, dry
     * @param wetAcross the distance of the marks across the mould, wet
     * @param dryAcross the same, dry
     */
    record Marks(
            Restraint restraint,
            Reading<Length> wetAlong,
            Reading<Length> dryAlong,
            Reading<Length> wetAcross,
            Reading<Length> dryAcross)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param restraint what held it while it dried
         * @param wetAlong the distance of the marks along the mould, wet
         * @param dryAlong the same, dry
         * @param wetAcross the distance of the marks across the mould, wet
         * @param dryAcross the same, dry
         */
        public Marks {
            Objects.requireNonNull(restraint, "restraint");
            Objects.requireNonNull(wetAlong, "wetAlong");
            Objects.requireNonNull(dryAlong, "dryAlong");
            Objects.requireNonNull(wetAcross, "wetAcross");
            Objects.requireNonNull(dryAcross, "dryAcross");
        }

        @Override
        public String toString() {
            return "marks, dried " + restraint + ": along " + wetAlong + " to " + dryAlong + ", across " + wetAcross
                    + " to " + dryAcross;
        }
    }

    /**
     * The time of a step.
     *
     * @param work the work
     * @param time the time of all of it
     * @param count the sheets, pieces or loads it was for; 1 or more
     */
    record Hours(Work work, Reading<Time> time, int count) implements Measurement {
        /**
         * Checks the time.
         *
         * @param work the work
         * @param time the time of all of it, above zero
         * @param count the sheets, pieces or loads it was for; 1 or more
         * @throws Refused if there is no time or no piece
         */
        public Hours {
            Objects.requireNonNull(work, "work");
            Objects.requireNonNull(time, "time");
            Kinds.TIME.siAboveZero(time.value(), "time of " + work.word());
            if (count < 1) {
                throw Refused.of(
                        "count.below-one",
                        work.word() + ": " + count + " given; must be 1 or more.",
                        "given",
                        count,
                        "least",
                        1);
            }
        }

        @Override
        public String toString() {
            return "hours of " + work.word() + ": " + time + " for " + count;
        }
    }

    /**
     * Raw fibre or rags weighed before cooking, and the stuff that came of them.
     *
     * @param fibre the fibre
     * @param form the form it was bought in
     * @param asBought the mass that was sorted and cooked, as bought
     * @param stuff the oven-dry mass of all that is left for the beater
     */
    record Cooked(Fibre fibre, BoughtFibre.Form form, Reading<Mass> asBought, Reading<Mass> stuff)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param fibre the fibre
         * @param form the form it was bought in
         * @param asBought the mass that was sorted and cooked, as bought
         * @param stuff the oven-dry mass of all that is left for the beater
         */
        public Cooked {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(form, "form");
            Objects.requireNonNull(asBought, "asBought");
            Objects.requireNonNull(stuff, "stuff");
        }

        /**
         * Takes the usual form of the fibre.
         *
         * @param fibre the fibre
         * @param asBought the mass that was sorted and cooked, as bought
         * @param stuff the oven-dry mass of all that is left for the beater
         */
        public Cooked(Fibre fibre, Reading<Mass> asBought, Reading<Mass> stuff) {
            this(fibre, BoughtFibre.Form.usual(Objects.requireNonNull(fibre, "fibre")), asBought, stuff);
        }

        @Override
        public String toString() {
            return "cooked: " + asBought + " of " + fibre + " as " + form.words() + ", " + stuff
                    + " of stuff, oven-dry";
        }
    }

    /**
     * One pulp read on both testers.
     *
     * @param number its Schopper–Riegler number
     * @param freeness its Canadian Standard freeness
     */
    record BothTesters(Reading<SchopperRiegler> number, Reading<CanadianFreeness> freeness) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param number its Schopper–Riegler number
         * @param freeness its Canadian Standard freeness
         */
        public BothTesters {
            Objects.requireNonNull(number, "number");
            Objects.requireNonNull(freeness, "freeness");
        }

        @Override
        public String toString() {
            return "both testers: " + number + ", " + freeness;
        }
    }

    /**
     * The water retention value of a sample of the stock.
     *
     * @param number the Schopper–Riegler number of the sample
     * @param value its water retention value
     * @param spin how it was spun
     */
    record WaterSpun(Reading<SchopperRiegler> number, Reading<WaterRetention> value, WaterRetentionModel.Spin spin)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param number the Schopper–Riegler number of the sample
         * @param value its water retention value
         * @param spin how it was spun
         */
        public WaterSpun {
            Objects.requireNonNull(number, "number");
            Objects.requireNonNull(value, "value");
            Objects.requireNonNull(spin, "spin");
        }

        @Override
        public String toString() {
            return "water spun at " + number + ": " + value + ", spin " + spin;
        }
    }

    /**
     * A jar of white water held beside a row of dilutions of the additive.
     *
     * @param additive the additive
     * @param circumstance what helped to keep it in the sheet
     * @param given what was given to the vat of it, product or active matter as the row of dilutions counts it
     * @param vat the volume of the vat
     * @param jar the strength of the dilution that looks the same
     */
    record JarCompared(
            Additive additive,
            RetentionModel.Circumstance circumstance,
            Reading<Mass> given,
            Reading<Volume> vat,
            Reading<SolutionStrength> jar)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param additive the additive
         * @param circumstance what helped to keep it in the sheet
         * @param given what was given to the vat of it, product or active matter as the row of dilutions counts it
         * @param vat the volume of the vat
         * @param jar the strength of the dilution that looks the same
         */
        public JarCompared {
            Objects.requireNonNull(additive, "additive");
            Objects.requireNonNull(circumstance, "circumstance");
            Objects.requireNonNull(given, "given");
            Objects.requireNonNull(vat, "vat");
            Objects.requireNonNull(jar, "jar");
        }

        @Override
        public String toString() {
            return "jar of " + additive.name() + ": " + given + " in " + vat + ", as the jar of " + jar;
        }
    }

    /**
     * A sheet burnt to ash.
     *
     * @param additive the filler
     * @param circumstance what helped to keep it in the sheet
     * @param dose filler given on oven-dry fibre
     * @param sheetAsh ash over the oven-dry sheet
     * @param fibreAsh ash over oven-dry fibre of the fibre alone
     * @param residue what the filler alone leaves, over itself
     */
    record Burnt(
            Additive additive,
            RetentionModel.Circumstance circumstance,
            Reading<Dose> dose,
            Reading<Share> sheetAsh,
            Reading<Share> fibreAsh,
            Amount<Share> residue)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param additive the filler
         * @param circumstance what helped to keep it in the sheet
         * @param dose filler given on oven-dry fibre
         * @param sheetAsh ash over the oven-dry sheet
         * @param fibreAsh ash over oven-dry fibre of the fibre alone
         * @param residue what the filler alone leaves, over itself
         */
        public Burnt {
            Objects.requireNonNull(additive, "additive");
            Objects.requireNonNull(circumstance, "circumstance");
            Objects.requireNonNull(dose, "dose");
            Objects.requireNonNull(sheetAsh, "sheetAsh");
            Objects.requireNonNull(fibreAsh, "fibreAsh");
            Objects.requireNonNull(residue, "residue");
        }

        @Override
        public String toString() {
            return "burnt with " + dose + " of " + additive.name() + ": ash of the sheet " + sheetAsh
                    + ", of the fibre " + fibreAsh + ", left of the additive " + residue;
        }
    }

    /**
     * A strip of the finished sheet measured in two airs, at rest in each.
     *
     * @param shrunk what it shrank in that direction when it was dried
     * @param first its length in the first air
     * @param firstAir the first air
     * @param second its length in the second air
     * @param secondAir the second air, damper or drier
     */
    record TwoAirs(
            Amount<LinearShrinkage> shrunk, Reading<Length> first, Air firstAir, Reading<Length> second, Air secondAir)
            implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param shrunk what it shrank in that direction when it was dried
         * @param first its length in the first air
         * @param firstAir the first air
         * @param second its length in the second air
         * @param secondAir the second air, damper or drier
         */
        public TwoAirs {
            Objects.requireNonNull(shrunk, "shrunk");
            Objects.requireNonNull(first, "first");
            Objects.requireNonNull(firstAir, "firstAir");
            Objects.requireNonNull(second, "second");
            Objects.requireNonNull(secondAir, "secondAir");
        }

        @Override
        public String toString() {
            return "in two airs, shrunk " + shrunk + ": " + first + " in " + firstAir + ", " + second + " in "
                    + secondAir;
        }
    }

    /**
     * An additive as it was weighed, in one portion. The order of these readings is the order in which they went in.
     *
     * @param additive the additive
     * @param product the mass of the product, as it comes out of the jar
     * @param fibre the oven-dry fibre the portion went on, if it is known
     */
    record AdditiveWeighed(Additive additive, Reading<Mass> product, Optional<Reading<Mass>> fibre)
            implements Measurement {
        /**
         * Checks the fibre.
         *
         * @param additive the additive
         * @param product the mass of the product, as it comes out of the jar
         * @param fibre the oven-dry fibre the portion went on, if it is known, above zero
         * @throws Refused if the fibre is nothing
         */
        public AdditiveWeighed {
            Objects.requireNonNull(additive, "additive");
            Objects.requireNonNull(product, "product");
            Objects.requireNonNull(fibre, "fibre");
            fibre.ifPresent(mass -> Kinds.MASS.siAboveZero(mass.value(), "fibre of " + additive.name()));
        }

        /**
         * Returns the dose the portion comes to.
         *
         * @return active matter over oven-dry fibre, if the fibre is known
         */
        public Optional<AdditiveDose> dose() {
            return fibre.map(mass -> AdditiveDose.ofProduct(additive, product.value(), mass.value()));
        }

        @Override
        public String toString() {
            return "additive weighed: " + product + " of " + additive.name()
                    + fibre.map(one -> ", for " + one + " of fibre").orElse("");
        }
    }

    /**
     * The hours with the roll down, as they were done.
     *
     * @param fibre the fibre that was beaten, where it was beaten apart from the rest
     * @param time the time of one load
     */
    record Beaten(Optional<Fibre> fibre, Reading<Time> time) implements Measurement {
        /**
         * Checks that nothing is missing.
         *
         * @param fibre the fibre that was beaten, where it was beaten apart from the rest
         * @param time the time of one load
         */
        public Beaten {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(time, "time");
        }

        @Override
        public String toString() {
            return "beaten " + time + fibre.map(one -> ", " + one).orElse("");
        }
    }

    /**
     * The consistency of the stirred vat, a sample of it strained and dried.
     *
     * @param consistency oven-dry fibre over stock
     */
    record VatStood(Reading<Consistency> consistency) implements Measurement {
        /**
         * Checks the consistency.
         *
         * @param consistency oven-dry fibre over stock, above zero
         * @throws Refused if there was no fibre
         */
        public VatStood {
            Objects.requireNonNull(consistency, "consistency");
            Kinds.CONSISTENCY.siAboveZero(consistency.value(), "consistency of the vat");
        }

        @Override
        public String toString() {
            return "vat stood at " + consistency;
        }
    }

    /**
     * What was formed of a piece, trial sheets too, and what came of it.
     *
     * @param sheets the sheets formed; 1 or more
     * @param good the good pieces in the end; 0 or more
     */
    record Formed(int sheets, int good) implements Measurement {
        /**
         * Checks the numbers.
         *
         * @param sheets the sheets formed; 1 or more
         * @param good the good pieces in the end; 0 or more
         * @throws Refused if no sheet was formed or the good pieces are below zero
         */
        public Formed {
            if (sheets < 1 || good < 0) {
                throw Refused.of(
                        "record.formed",
                        "sheets formed: " + sheets + " with " + good
                                + " good pieces given; must be 1 sheet or more, and no fewer pieces than none.",
                        "sheets",
                        sheets,
                        "good",
                        good);
            }
        }

        @Override
        public String toString() {
            return "formed: " + sheets + " sheets, " + good + " good pieces";
        }
    }

    /** Where sheets and pieces are rejected. */
    enum Step {
        /** Forming and couching. */
        FORMING("forming"),
        /** Pressing and parting. */
        PRESSING("pressing"),
        /** Drying. */
        DRYING("drying"),
        /** Surface sizing. */
        SIZING("sizing"),
        /** Trimming or tearing to size. */
        CUTTING("cutting"),
        /** Folding a card. */
        FOLDING_CARDS("folding cards"),
        /** Folding and glueing an envelope. */
        FOLDING_ENVELOPES("folding envelopes");

        private final String word;

        Step(String word) {
            this.word = word;
        }

        /**
         * Returns the step in words.
         *
         * @return for example {@code folding cards}
         */
        public String word() {
            return word;
        }
    }

    /** Work that takes time, sheet by sheet or load by load. */
    enum Work {
        /** Loading, draining and cleaning the beater, by load. */
        BEATER_LOAD("loading the beater", "labour.beating-load"),
        /** Measuring and adding colour and size, by load. */
        ADDITIVES("giving colour and size", "labour.additive-load"),
        /** Charging the vat, with the trial sheets, by charge. */
        VAT_CHARGE("charging the vat", "labour.vat-charge"),
        /** Forming and couching, by sheet. */
        FORMING("forming and couching", "labour.sheet-time"),
        /** Parting sheets from felts, by sheet. */
        PARTING("parting", "labour.part-time"),
        /** Exchanging a post and pressing again, by post. */
        SECOND_PRESSING("pressing again", "labour.second-press"),
        /** Loading or unloading a dryer, by load. */
        DRYER_LOAD("loading the dryer", "labour.dry-load"),
        /** Changing blotters, by sheet and change. */
        BLOTTER_CHANGE("changing blotters", "labour.blotter-change"),
        /** Surface sizing, by sheet. */
        SIZING("sizing", "labour.size"),
        /** Looking over and sorting, by sheet. */
        SORTING("sorting", "labour.sort"),
        /** Trimming or tearing, by sheet. */
        TRIMMING("trimming", "labour.trim"),
        /** Folding and glueing, by envelope. */
        FOLDING("folding", "labour.fold");

        private final String word;
        private final String id;

        Work(String word, String id) {
            this.word = word;
            this.id = id;
        }

        /**
         * Returns the work in words.
         *
         * @return for example {@code forming and couching}
         */
        public String word() {
            return word;
        }

        /**
         * Returns the assumption such a time is read for.
         *
         * @return its id, for example {@code labour.sheet-time}
         */
        public String assumption() {
            return id;
        }
    }
}
