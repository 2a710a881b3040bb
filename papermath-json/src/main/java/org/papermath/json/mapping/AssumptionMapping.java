package org.papermath.json.mapping;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.DirectMeasurements;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.json.FaultCodes;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.NearestWord;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * A value of the studio's own. Its scope is a fibre the library knows or another subject, and a place; its values are
 * texts with a unit, or plain numbers in the unit of the assumption.
 */
final class AssumptionMapping {
    private static final String ORIGIN = "given by the user";

    private AssumptionMapping() {}

    /** Reads the values of one's own, whose meaning, unit and bounds stand in the table of an edition. */
    static ReadResult<List<Assumption>> read(ValueReader at, Assumptions table) {
        Map<String, Assumption> patterns = new LinkedHashMap<>();
        Set<String> keys = new HashSet<>();
        if (!at.isGiven()) {
            return at.list(0, CommonMembers.MANY, one -> one.object(in -> read(in, patterns, keys, table.edition())));
        }
        table.all().forEach(row -> patterns.putIfAbsent(row.id(), row));
        DirectMeasurements.all().forEach(row -> patterns.putIfAbsent(row.id(), row));
        return at.list(0, CommonMembers.MANY, one -> one.object(in -> read(in, patterns, keys, table.edition())));
    }

    /** Returns the ids a value of one's own may have. */
    static Set<String> ids(String edition) {
        Set<String> ids = new HashSet<>(Assumptions.edition(edition).ids());
        DirectMeasurements.all().forEach(row -> ids.add(row.id()));
        return ids;
    }

    private static ReadResult<Assumption> read(
            ObjectReader in, Map<String, Assumption> patterns, Set<String> keys, String edition) {
        ReadResult<Assumption> pattern = pattern(in.required("id").text(), patterns, edition);
        String unit =
                pattern.isFaulty() || !pattern.isGiven() ? "" : pattern.get().unit();
        ReadResult<Fibre> fibre =
                FibreMapping.known(in.optional("fibre").text(), "A value of another one has its id under \"subject\".");
        ReadResult<String> subject =
                CommonMembers.sayable(in.optional("subject").text());
        ReadResult<String> at = CommonMembers.sayable(in.optional("at").text());
        ReadResult<Double> value = number(in.required("value"), unit);
        ReadResult<Double> low = number(in.optional("low"), unit);
        ReadResult<Double> high = number(in.optional("high"), unit);
        in.optional("unit").text().check(written -> sameUnit(written, unit));
        ReadResult<Basis> basis = in.optional("basis").choice(List.of(Basis.values()), Basis::word);
        ReadResult<String> source = in.optional("source").note().check(Source::new);
        ReadResult<List<Assumption.Lean>> leans = EvidenceMapping.leans(in);
        if (fibre.isGiven() && subject.isGiven()) {
            in.refuse(FaultCodes.ONE_OF, "\"fibre\" and \"subject\" are both written. Keep one of them.");
        }
        if (low.isGiven() != high.isGiven()) {
            in.refuse(FaultCodes.MISSING, "\"low\" and \"high\" belong together. Write both or neither.");
        }
        return in.make(() -> {
                    double likely = value.get();
                    return pattern.get()
                            .with(
                                    scope(fibre, subject, at),
                                    likely,
                                    low.orElse(likely),
                                    high.orElse(likely),
                                    basis.orElse(Basis.GIVEN),
                                    new Source(source.orElse(ORIGIN)))
                            .leaning(leans.orElse(List.of()));
                })
                .check(own -> once(own, keys));
    }

    /**
     * Writes a value of one's own.
     *
     * @throws Refused if the edition has no such assumption: what could not be read again is not written
     */
    static void write(ObjectWriter out, Assumption own, Set<String> ids, String edition) {
        if (!ids.contains(own.id())) {
            throw Refused.of(
                    "assumption.unknown",
                    "there is no assumption \"" + own.id() + "\" in edition " + edition
                            + "; a document with it could not be read again. Take it out of the values of the studio.",
                    "found",
                    own.id());
        }
        out.member("id").text(own.id());
        own.scope().subject().ifPresent(subject -> {
            boolean fibre = Fibres.all().stream().anyMatch(known -> known.id().equals(subject));
            CommonMembers.name(out.member(fibre ? "fibre" : "subject"), subject);
        });
        own.scope().place().ifPresent(place -> CommonMembers.name(out.member("at"), place));
        number(out.member("value"), own.likely(), own.unit());
        if (own.low() != own.likely() || own.high() != own.likely()) {
            number(out.member("low"), own.low(), own.unit());
            number(out.member("high"), own.high(), own.unit());
        }
        out.member("basis").text(own.basis().word());
        CommonMembers.note(out.member("source"), own.source().text());
        EvidenceMapping.leans(out, own);
    }

    private static void once(Assumption own, Set<String> keys) {
        if (!keys.add(own.key())) {
            throw Refused.of(
                    "builder.twice",
                    "the value of " + own.key() + " is set twice. Set it once.",
                    "of",
                    "assumptions",
                    "what",
                    own.key());
        }
    }

    private static ReadResult<Assumption> pattern(
            ReadResult<String> id, Map<String, Assumption> patterns, String edition) {
        if (!id.isFaulty() && id.isGiven() && !patterns.containsKey(id.get())) {
            String nearest = id.nearest(patterns.keySet());
            List<String> family = NearestWord.ofOneFamily(id.get(), patterns.keySet());
            return id.refuse(
                            "assumption.unknown",
                            "there is no assumption \"" + JsonValue.shown(id.get())
                                    + "\" in edition "
                                    + edition + "." + (nearest.isEmpty() ? "" : " Did you mean \"" + nearest + "\"?")
                                    + (family.isEmpty()
                                            ? ""
                                            : " Those of " + family(id.get()) + ", the most alike first: "
                                                    + NearestWord.listed(family) + "."),
                            family.isEmpty() ? patterns.keySet() : family)
                    .map(patterns::get);
        }
        return id.map(patterns::get);
    }

    private static String family(String id) {
        return id.substring(0, id.indexOf('.'));
    }

    private static Scope scope(ReadResult<Fibre> fibre, ReadResult<String> subject, ReadResult<String> at) {
        Scope scope = fibre.optional()
                .map(Fibre::id)
                .or(subject::optional)
                .map(Scope::of)
                .orElse(Scope.GENERAL);
        return at.optional().map(scope::on).orElse(scope);
    }

    private static void sameUnit(String written, String unit) {
        if (!unit.isEmpty() && !written.equals(unit)) {
            throw Refused.of(
                    "assumption.unit",
                    "the values of this assumption are in " + unit + "; " + written
                            + " is written. Write the unit with the value instead, such as \"1 " + written + "\".",
                    "found",
                    written,
                    "accepted",
                    List.of(unit));
        }
    }

    private static ReadResult<Double> number(ValueReader at, String unit) {
        if (!at.isText()) {
            return at.number(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        }
        return at.text().map(text -> {
            try {
                return unit.isEmpty() ? 0.0 : number(text, unit);
            } catch (PapermathException e) {
                // What a text may say follows from the assumption, so this is not what the schema calls a quantity.
                throw e.code().equals("quantity.range")
                        ? e
                        : Refused.of(
                                "assumption.unit",
                                String.valueOf(e.getMessage()),
                                "found",
                                text,
                                "accepted",
                                List.of(unit));
            }
        });
    }

    private static void number(ValueWriter out, double value, String unit) {
        if (unit.equals("1")) {
            out.number(value);
        } else {
            out.text(Units.number(value) + " " + unit);
        }
    }

    /**
     * Reads a number with exactly the wanted unit, whatever its kind could have, since it may be a difference; or with
     * any unit of a kind that knows the wanted one.
     */
    private static double number(String text, String unit) {
        String head = text.endsWith(unit)
                ? text.substring(0, text.length() - unit.length()).strip()
                : "";
        if (!unit.equals("1") && !head.isEmpty() && "0123456789.".indexOf(head.charAt(head.length() - 1)) >= 0) {
            return Units.read(Kinds.NUMBER, head).value();
        }
        PapermathException refusal = null;
        for (Kind<?> kind : kinds(unit)) {
            try {
                return in(kind, text, unit);
            } catch (PapermathException e) {
                refusal = refusal == null ? e : refusal;
            }
        }
        if (refusal != null) {
            throw refusal;
        }
        throw Refused.of(
                "assumption.unit",
                "\"" + JsonValue.shown(text) + "\" is written; must be a value in " + unit + ", such as \"1 " + unit
                        + "\".",
                "found",
                text,
                "accepted",
                List.of(unit));
    }

    private static List<Kind<?>> kinds(String unit) {
        return unit.equals("1")
                ? List.of(Kinds.NUMBER)
                : Kinds.all().stream()
                        .filter(kind -> kind.codes().contains(unit))
                        .<Kind<?>>map(kind -> kind)
                        .toList();
    }

    private static double in(Kind<?> kind, String text, String unit) {
        Amount<?> amount = Units.read(kind, text);
        return amount.in(unit);
    }
}
