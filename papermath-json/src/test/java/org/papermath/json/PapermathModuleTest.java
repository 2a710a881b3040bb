package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.spi.ServiceProvider;

import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.ReamBasis;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.shape.Format;
import org.papermath.shape.FormatSystem;
import org.papermath.shape.Formats;

import tools.jackson.core.JacksonException;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.json.JsonMapper;

class PapermathModuleTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().addModule(new PapermathModule()).build();

    record Swatch(String name, Amount<Grammage> grammage, Quantity<Length> side, List<Amount<Consistency>> tries,
            Map<String, Quantity<Pressure>> airs, Amount<GaugePressure> gauge) {
    }

    record Open(Amount<?> anything) {
    }

    private static final String TEXT = "{\"name\":\"dune\",\"grammage\":\"260 g/m2\",\"side\":\"105 mm\","
            + "\"tries\":[\"1.2 %\",\"0.006\"],\"airs\":{\"loft\":\"101.3 kPa\"},\"gauge\":\"3 bar\"}";

    @Test
    void writesAndReadsQuantitiesByTheirDeclaredType() {
        Swatch swatch = new Swatch("dune", Grammage.gsm(260), Amounts.mm(105),
                List.of(Consistency.percent(1.2), Kinds.CONSISTENCY.of(0.006, "1")),
                Map.of("loft", Kinds.AIR_PRESSURE.of(101.3, "kPa")), GaugePressure.bar(3));

        assertThat(MAPPER.writeValueAsString(swatch)).isEqualTo(TEXT);
        Swatch read = MAPPER.readValue(TEXT, Swatch.class);
        assertThat(read).isEqualTo(swatch);
        assertThat(((Amount<Pressure>) read.airs().get("loft")).kind()).isEqualTo(Kinds.AIR_PRESSURE);
        assertThat(read.gauge().kind()).isEqualTo(Kinds.GAUGE_PRESSURE);
    }

    @Test
    void readsTheFormInPartsAndReamWeights() {
        TypeReference<Amount<Grammage>> type = new TypeReference<>() {
        };
        assertThat(MAPPER.readValue("{\"value\": 260, \"unit\": \"g/m2\"}", type)).isEqualTo(Grammage.gsm(260));
        assertThat(MAPPER.readValue("{\"weight\": \"80 lb\", \"sheet\": [\"20 in\", \"26 in\"], \"count\": 500}", type)
                .isWithin(Grammage.pounds(80, ReamBasis.COVER), 1e-12)).isTrue();
    }

    @Test
    void goesThroughATree() {
        assertThat(MAPPER.treeToValue(MAPPER.readTree(TEXT), Swatch.class).grammage()).isEqualTo(Grammage.gsm(260));
    }

    @Test
    void readsEveryKindByItsType() {
        for (Kind<?> kind : Kinds.all()) {
            String code = kind.codes().get(0);
            String text = code.equals("1") ? "\"0.25\"" : "\"0.25 " + code + "\"";
            Amount<?> amount = MAPPER.readValue(text,
                    MAPPER.getTypeFactory().constructParametricType(Amount.class, kind.type()));
            assertThat(amount.kind()).isSameAs(kind);
            assertThat(MAPPER.writeValueAsString(amount)).isEqualTo(text);
        }
    }

    @Test
    void writesQuantitiesOfOthersWhereTheTypeIsDeclared() {
        record Side(Quantity<Length> side) {
        }

        Quantity<Length> others = ServiceProvider.current().getQuantityFactory(Length.class)
                .create(12.5, Kinds.LENGTH.siUnit());

        assertThat(MAPPER.writeValueAsString(new Side(others)))
                .isEqualTo("{\"side\":\"12.5 m\"}");
        assertThatThrownBy(() -> MAPPER.writeValueAsString(others))
                .isInstanceOf(JacksonException.class).hasMessageContaining("does not say its kind");
    }

    @Test
    void failsAtTheFirstFaultWithItsCause() {
        InvalidFormatException wrong = catchThrowableOfType(InvalidFormatException.class,
                () -> MAPPER.readValue(TEXT.replace("260 g/m2", "260 mm"), Swatch.class));
        assertThat(wrong).hasMessageContaining("not a unit of grammage").cause().isInstanceOf(Refused.class);
        assertThat(wrong.getValue()).isEqualTo("260 mm");
        assertThat(wrong.getPathReference()).contains("grammage");

        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("105 mm", "3 pt"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class).cause().isInstanceOf(Unclear.class);
        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("\"260 g/m2\"", "260"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class).hasMessageContaining("without a unit");
        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("\"260 g/m2\"",
                "{\"value\": 1e400, \"unit\": \"g/m2\"}"),
                Swatch.class)).isInstanceOf(InvalidFormatException.class).cause().isInstanceOf(DocumentException.class);
        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("\"260 g/m2\"",
                "{\"value\": 1, \"unit\": \"g/m2\", \"x-a\": 1}"),
                Swatch.class)).isInstanceOf(InvalidFormatException.class);
        assertThatThrownBy(() -> MAPPER.readValue("{\"anything\": \"260 g/m2\"}", Open.class))
                .isInstanceOf(JacksonException.class).hasMessageContaining("declare the type");
    }

    record Notebook(Air room, Fibre fibre, Furnish furnish, List<Format> formats, Reading<Mass> weighed,
            Map<String, Reading<Length>> sizes) {
    }

    @Test
    void writesAndReadsSmallValuesAsDocumentsDo() {
        Fibre reed = Fibre.of("my-reed", "my reed", Fibre.SourceClass.GRASS, "straw");
        Notebook notebook = new Notebook(Air.of(Amounts.celsius(18), RelativeHumidity.percent(60)), reed,
                Furnish.of(Share.percent(30), Fibres.KOZO, Share.percent(70), reed),
                List.of(Formats.ISO_A5, Format.of("card", FormatSystem.TRADITIONAL, Format.Use.CARD, Amounts.mm(90),
                        Amounts.inches(2))),
                Reading.of(Amounts.grams(4.2), Amounts.grams(0.1)).on(LocalDate.of(2027, 3, 12)),
                Map.of("width", Reading.of(Amounts.mm(201), Amounts.mm(0.5))));
        String reedText = "{\"id\":\"my-reed\",\"name\":\"my reed\",\"class\":\"grass\",\"kin\":[\"straw\"]}";
        String text = "{\"room\":{\"temperature\":\"18 Cel\",\"humidity\":\"60 %\"},\"fibre\":" + reedText
                + ",\"furnish\":[{\"fibre\":\"kozo\",\"share\":\"30 %\"},{\"fibre\":" + reedText
                + ",\"share\":\"70 %\"}],\"formats\":[\"ISO A5\",{\"name\":\"card\",\"system\":\"traditional\","
                + "\"use\":\"card\",\"sides\":[\"2 in\",\"90 mm\"]}],"
                + "\"weighed\":{\"read\":\"4.2 g\",\"error\":\"0.1 g\",\"on\":\"2027-03-12\"},"
                + "\"sizes\":{\"width\":{\"read\":\"201 mm\",\"error\":\"0.5 mm\"}}}";
        assertThat(MAPPER.writeValueAsString(notebook)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, Notebook.class)).isEqualTo(notebook);
        assertThat(MAPPER.treeToValue(MAPPER.valueToTree(notebook), Notebook.class)).isEqualTo(notebook);
        for (String[] wrong : new String[][] {{"18 Cel", "180 Cel"}, {"\"kozo\"", "\"kosho\""}, {"70 %", "60 %"},
                {"ISO A5", "A6"}, {"0.1 g", "0.1 mm"}, {"\"humidity\"", "\"x-own\":1,\"humidity\""},
                {"\"error\":\"0.5 mm\"", "\"eror\":\"0.5 mm\""}}) {
            assertThat(text).contains(wrong[0]);
            assertThatThrownBy(() -> MAPPER.readValue(text.replace(wrong[0], wrong[1]), Notebook.class)).as(wrong[1])
                    .isInstanceOf(InvalidFormatException.class).cause().isInstanceOf(DocumentException.class);
        }
        assertThatThrownBy(() -> MAPPER.readValue("{\"read\":\"1 g\",\"error\":\"1 g\"}", Reading.class))
                .isInstanceOf(JacksonException.class).hasMessageContaining("declare the type");
    }

    @Test
    void holdsTheLimitsOfDocuments() {
        TypeReference<Amount<Length>> type = new TypeReference<>() {
        };
        for (String text : List.of("\"1e-400 m\"", "\"1" + " ".repeat(200) + "m\"", "\"1e400 m\"", "\"1e307 km\"",
                "{\"value\": 1e307, \"unit\": \"km\"}", "\"" + "1".repeat(5000) + " m\"")) {
            assertThatThrownBy(() -> MAPPER.readValue(text, type)).as(text)
                    .isInstanceOf(InvalidFormatException.class).hasMessageMatching("(?s).*(too|at most|finite).*");
        }
        assertThat(MAPPER.readValue("\"0.0 m\"", type).value()).isZero();
    }

    @Test
    void writesAndReadsTheBasisOfAReam() {
        String cover = "{\"name\":\"cover\",\"sheet\":[\"20 in\",\"26 in\"],\"count\":500}";

        assertThat(MAPPER.writeValueAsString(ReamBasis.COVER)).isEqualTo(cover);
        assertThat(MAPPER.readValue(cover, ReamBasis.class)).isEqualTo(ReamBasis.COVER);
        assertThatThrownBy(() -> MAPPER.readValue(cover.replace("26", "27"), ReamBasis.class))
                .isInstanceOf(InvalidFormatException.class).hasMessageContaining("reckoned on a sheet");
        assertThatThrownBy(() -> MAPPER.readValue(cover.replace(",\"count\":500", ""), ReamBasis.class))
                .isInstanceOf(InvalidFormatException.class).hasMessageContaining("count");
    }
}
