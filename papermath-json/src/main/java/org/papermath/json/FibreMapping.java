package org.papermath.json;

import java.util.List;

import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.quantity.Refused;

/** A fibre: the id or the name of one the library knows, or one of one's own in full. */
final class FibreMapping {
    private static final String OTHERWISE = "Another one is written in full, such as {\"id\": \"my-reed\","
            + " \"name\": \"my reed\", \"class\": \"grass\"}.";

    private FibreMapping() {
    }

    static Got<Fibre> read(ValueAt at) {
        return at.isObject() ? at.object(FibreMapping::own) : known(at.text(), OTHERWISE);
    }

    /** Finds a fibre of the library; what another one needs is not what a program would write. */
    static Got<Fibre> known(Got<String> name, String otherwise) {
        return name.map(text -> {
            try {
                return Fibres.find(text);
            } catch (Refused e) {
                List<String> ids = Fibres.all().stream().map(Fibre::id).toList();
                String nearest = name.nearest(ids);
                throw Refused.of(e.code(), "the library knows no fibre \"" + JsonValue.shown(text) + "\"."
                        + (nearest.isEmpty() ? "" : " Did you mean \"" + nearest + "\"?") + " It knows: "
                        + String.join(", ", ids) + ". " + otherwise, "found", text, "nearest",
                        String.valueOf(e.arguments().get("nearest")), "accepted", ids);
            }
        });
    }

    static void write(ValueOut out, Fibre fibre) {
        if (Fibres.all().contains(fibre) && !out.keeps()) {
            out.text(fibre.id());
        } else {
            out.object(members -> own(members, fibre));
        }
    }

    private static Got<Fibre> own(ObjectAt in) {
        Got<String> id = Common.sayable(in.required("id").text());
        Got<String> name = in.required("name").text();
        Got<Fibre.SourceClass> sourceClass = in.required("class")
                .choice(List.of(Fibre.SourceClass.values()), Common::word);
        Got<List<String>> kin = in.optional("kin").list(0, Common.MANY, one -> Common.sayable(one.text()));
        return in.make(() -> Fibre.of(id.get(), name.get(), sourceClass.get(),
                kin.orElse(List.of()).toArray(String[]::new)));
    }

    private static void own(ObjectOut out, Fibre fibre) {
        Common.name(out.member("id"), fibre.id());
        Common.text(out.member("name"), fibre.name());
        out.member("class").text(Common.word(fibre.sourceClass()));
        if (!fibre.kin().isEmpty()) {
            out.member("kin").list(Common.atMost(Common.MANY, fibre.kin(), "kin"), Common::name);
        }
    }
}
