package org.papermath.json.mapping;

import java.util.List;
import org.papermath.colour.Illuminant;
import org.papermath.colour.Lab;
import org.papermath.colour.WantedColour;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;

/** A colour that is wanted. */
public final class ColourMapping {
    /** The greatest lightness that is read. */
    public static final double LIGHTEST = 110;

    /** The farthest from grey that a and b are read. */
    public static final double STRONGEST = 150;

    /** The farthest a colour is said to come out from the one told. */
    public static final double FARTHEST = 50;

    private static final List<Illuminant> LIGHTS = List.of(Illuminant.values());

    private ColourMapping() {}

    static ReadResult<WantedColour> wanted(ObjectReader in) {
        Parts parts = new Parts(in);
        ReadResult<Illuminant> light = in.optional("illuminant").choice(LIGHTS, Illuminant::name);
        ReadResult<Parts> told = in.optional("told").object(one -> {
            Parts read = new Parts(one);
            return one.make(() -> read.checked());
        });
        ReadResult<Double> within = in.optional("within").number(0, FARTHEST);
        return in.make(() -> {
            Illuminant seen = light.orElse(Illuminant.D65);
            WantedColour wanted = WantedColour.of(parts.lab(seen));
            return told.optional().isPresent() && within.optional().isPresent()
                    ? wanted.told(told.get().lab(seen), within.get())
                    : wanted;
        });
    }

    /** A colour that was read. */
    static ReadResult<Lab> lab(ObjectReader in) {
        Parts parts = new Parts(in);
        ReadResult<Illuminant> light = in.optional("illuminant").choice(LIGHTS, Illuminant::name);
        return in.make(() -> parts.lab(light.orElse(Illuminant.D65)));
    }

    static void lab(ObjectWriter out, Lab lab) {
        write(out, lab);
        if (lab.illuminant() != Illuminant.D65) {
            out.member("illuminant").text(lab.illuminant().name());
        }
    }

    private record Parts(ReadResult<Double> l, ReadResult<Double> a, ReadResult<Double> b) {
        Parts(ObjectReader in) {
            this(
                    in.required("l").number(0, LIGHTEST),
                    in.required("a").number(-STRONGEST, STRONGEST),
                    in.required("b").number(-STRONGEST, STRONGEST));
        }

        Parts checked() {
            lab(Illuminant.D65);
            return this;
        }

        Lab lab(Illuminant light) {
            return new Lab(l.get(), a.get(), b.get(), light);
        }
    }

    static void write(ObjectWriter out, WantedColour wanted) {
        lab(out, wanted.lab());
        wanted.told().ifPresent(told -> out.member("told").object(members -> write(members, told)));
        wanted.nineInTen().ifPresent(within -> out.member("within").number(within));
    }

    private static void write(ObjectWriter out, Lab lab) {
        out.member("l").number(lab.l());
        out.member("a").number(lab.a());
        out.member("b").number(lab.b());
    }
}
