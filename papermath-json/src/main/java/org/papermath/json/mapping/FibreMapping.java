package org.papermath.json.mapping;

import java.util.List;
import java.util.Locale;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.tree.JsonValue;
import org.papermath.quantity.Refused;

/** A fibre: the id or the name of one the library knows, or one of one's own in full. */
public final class FibreMapping {
    private static final String OTHERWISE = "Another one is written in full, such as {\"id\": \"my-reed\","
            + " \"name\": \"my reed\", \"class\": \"grass\"}.";

    private FibreMapping() {}

    public static ReadResult<Fibre> read(ValueReader at) {
        return at.isObject() ? at.object(FibreMapping::own) : known(at.text(), OTHERWISE);
    }

    /** Finds a fibre of the library; what another one needs is not what a program would write. */
    static ReadResult<Fibre> known(ReadResult<String> name, String otherwise) {
        return name.map(text -> {
            try {
                return Fibres.find(text);
            } catch (Refused e) {
                List<String> ids = Fibres.all().stream().map(Fibre::id).toList();
                String nearest = name.nearest(ids);
                throw Refused.of(
                        e.code(),
                        "the library knows no fibre \"" + JsonValue.shown(text) + "\"."
                                + (nearest.isEmpty() ? alike(text, ids) : " Did you mean \"" + nearest + "\"?")
                                + " It knows: "
                                + String.join(", ", ids) + ". " + otherwise,
                        "found",
                        text,
                        "nearest",
                        String.valueOf(e.arguments().get("nearest")),
                        "accepted",
                        ids);
            }
        });
    }

    /** Those that have a word of the name in theirs: a linter is of the first cut or the second. */
    private static String alike(String text, List<String> ids) {
        List<String> words = List.of(text.toLowerCase(Locale.ROOT).split("[^\\p{L}]+", -1));
        List<String> alike = ids.stream()
                .filter(id -> words.stream().anyMatch(List.of(id.split("-", -1))::contains))
                .toList();
        return alike.isEmpty() ? "" : " It may be " + String.join(" or ", alike) + ".";
    }

    /** Reads the form a fibre is bought in. */
    static ReadResult<BoughtFibre.Form> form(ObjectReader in) {
        return in.optional("form").choice(List.of(BoughtFibre.Form.values()), CommonMembers::word);
    }

    /** Writes a form that is not the usual one. */
    static void form(ObjectWriter out, Fibre fibre, BoughtFibre.Form form) {
        if (form != BoughtFibre.Form.usual(fibre)) {
            out.member("form").text(CommonMembers.word(form));
        }
    }

    public static void write(ValueWriter out, Fibre fibre) {
        if (Fibres.all().contains(fibre) && !out.keeps()) {
            out.text(fibre.id());
        } else {
            out.object(members -> own(members, fibre));
        }
    }

    private static ReadResult<Fibre> own(ObjectReader in) {
        ReadResult<String> id = CommonMembers.sayable(in.required("id").text());
        ReadResult<String> name = in.required("name").text();
        ReadResult<Fibre.SourceClass> sourceClass =
                in.required("class").choice(List.of(Fibre.SourceClass.values()), CommonMembers::word);
        ReadResult<List<String>> kin =
                in.optional("kin").list(0, CommonMembers.MANY, one -> CommonMembers.sayable(one.text()));
        return in.make(() -> Fibre.of(
                id.get(), name.get(), sourceClass.get(), kin.orElse(List.of()).toArray(String[]::new)));
    }

    private static void own(ObjectWriter out, Fibre fibre) {
        CommonMembers.name(out.member("id"), fibre.id());
        CommonMembers.text(out.member("name"), fibre.name());
        out.member("class").text(CommonMembers.word(fibre.sourceClass()));
        if (!fibre.kin().isEmpty()) {
            out.member("kin").list(CommonMembers.atMost(CommonMembers.MANY, fibre.kin(), "kin"), CommonMembers::name);
        }
    }
}
