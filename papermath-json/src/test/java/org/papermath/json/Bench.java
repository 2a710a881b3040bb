package org.papermath.json;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueWriter;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** A document made up for the tests: a bench with vats on it, and a shelf that may stand in a document of its own. */
final class Bench {
    static final DocumentFormat FORMAT = new DocumentFormat("bench", 1, 2);
    static final DocumentFormat SHELF = new DocumentFormat("shelf", 1, 0);

    private Bench() {}

    enum Wood {
        BEECH,
        LIME,
        OAK;

        String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    record Vat(String name, Amount<Volume> volume, int sheets, Optional<Amount<Grammage>> grammage) {
        Vat {
            if (name.equals("leaky")) {
                throw Refused.of("vat.leaky", "vat: a leaky vat cannot be used. Mend it.", "given", name);
            }
        }
    }

    record Shelf(String name, List<Amount<Length>> boards) {}

    record Plan(
            String title,
            LocalDate day,
            Wood wood,
            double slope,
            boolean indoors,
            List<Vat> vats,
            Map<String, Amount<Dose>> doses,
            Optional<Amount<Mass>> load,
            Optional<Shelf> shelf,
            Optional<String> note,
            Optional<String> favourite) {}

    static ReadResult<Plan> plan(ObjectReader in) {
        ReadResult<String> title = in.required("title").text();
        ReadResult<LocalDate> day = in.required("day").date();
        ReadResult<Wood> wood = in.required("wood").choice(List.of(Wood.values()), Wood::word);
        ReadResult<Double> slope = in.optional("slope").number(0, 1);
        ReadResult<Boolean> indoors = in.optional("indoors").flag();
        ReadResult<List<Vat>> vats = in.required("vats").list(1, 10, vat -> vat.object(Bench::vat));
        ReadResult<Map<String, Amount<Dose>>> doses = in.optional("doses").map(dose -> dose.quantity(Kinds.DOSE));
        ReadResult<Amount<Mass>> load =
                in.optional("load").quantity(Kinds.MASS).check(mass -> Kinds.MASS.siAboveZero(mass, "load"));
        ReadResult<Shelf> shelf = in.optional("shelf").reference(SHELF, Bench::shelf);
        ReadResult<String> note = in.optional("note").note();
        ReadResult<String> favourite = in.optional("favourite").nameAmong(List.of("small vat", "large vat"), "vat");
        return in.make(() -> new Plan(
                title.get(),
                day.get(),
                wood.get(),
                slope.orElse(0.0),
                indoors.orElse(true),
                vats.get(),
                doses.orElse(Map.of()),
                load.optional(),
                shelf.optional(),
                note.optional(),
                favourite.optional()));
    }

    static ReadResult<Vat> vat(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<Amount<Volume>> volume = in.required("volume").quantity(Kinds.VOLUME);
        ReadResult<Integer> sheets = in.required("sheets").count(1, 500);
        ReadResult<Amount<Grammage>> grammage = in.optional("grammage").quantity(Kinds.GRAMMAGE);
        return in.make(() -> new Vat(name.get(), volume.get(), sheets.get(), grammage.optional()));
    }

    static ReadResult<Shelf> shelf(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<List<Amount<Length>>> boards = in.required("boards").list(board -> board.quantity(Kinds.LENGTH));
        return in.make(() -> new Shelf(name.get(), boards.get()));
    }

    static DocumentReader<Plan> reader() {
        return DocumentReader.of(FORMAT, Bench::plan);
    }

    static String write(Document<Plan> document) {
        return DocumentWriter.write(FORMAT, document, Bench::plan);
    }

    static void plan(ObjectWriter out, Plan plan) {
        out.member("title").text(plan.title());
        out.member("day").date(plan.day());
        out.member("wood").text(plan.wood().word());
        out.member("slope").number(plan.slope());
        out.member("indoors").flag(plan.indoors());
        out.member("vats").list(plan.vats(), (item, vat) -> item.object(o -> vat(o, vat)));
        out.member("doses").map(plan.doses(), (item, dose) -> item.quantity(dose));
        plan.load().ifPresent(load -> out.member("load").quantity(load));
        plan.shelf().ifPresent(shelf -> out.member("shelf").reference(o -> shelf(o, shelf)));
        plan.note().ifPresent(note -> out.member("note").text(note));
        plan.favourite().ifPresent(name -> out.member("favourite").text(name));
    }

    static void vat(ObjectWriter out, Vat vat) {
        out.member("name").text(vat.name());
        out.member("volume").quantity(vat.volume());
        out.member("sheets").count(vat.sheets());
        vat.grammage().ifPresent(grammage -> out.member("grammage").quantity(grammage));
    }

    static void shelf(ObjectWriter out, Shelf shelf) {
        out.member("name").text(shelf.name());
        out.member("boards").list(shelf.boards(), ValueWriter::quantity);
    }

    static final String GOOD = """
            {
              "format": "papermath/bench",
              "version": "1.2",
              "title": "Morning set-up",
              "day": "2026-03-02",
              "wood": "lime",
              "slope": 0.25,
              "indoors": false,
              "vats": [
                {
                  "name": "small vat",
                  "volume": "40 L",
                  "sheets": 25,
                  "grammage": "260 g/m2"
                },
                {
                  "name": "large vat",
                  "volume": "22.5 gal_us",
                  "sheets": 60
                }
              ],
              "doses": {
                "chalk": "4 %",
                "size": "12 g/kg"
              },
              "load": "81.5 kg",
              "shelf": {
                "name": "under the window",
                "boards": ["1.2 m", "48 in"]
              },
              "note": "wax the edge\\nand wipe it",
              "favourite": "large vat"
            }
            """;
}
