package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.annotation.JsonFormat;
import java.io.IOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Volume;
import javax.measure.spi.ServiceProvider;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.format.Formats;
import org.papermath.format.ReamBasis;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.Stage;
import org.papermath.plan.VatPlan;
import org.papermath.press.Press;
import org.papermath.press.PressingModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;
import org.papermath.shape.Outline;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.Version;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JacksonModule;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.cfg.MapperBuilder;
import tools.jackson.databind.exc.InvalidDefinitionException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

class PapermathModuleTest {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().addModule(new PapermathModule()).build();

    record Swatch(
            String name,
            Amount<Grammage> grammage,
            Quantity<Length> side,
            List<Amount<Consistency>> tries,
            Map<String, Quantity<Pressure>> airs,
            Amount<GaugePressure> gauge) {}

    record Open(Amount<?> anything) {}

    private static final String TEXT = "{\"name\":\"dune\",\"grammage\":\"260 g/m2\",\"side\":\"105 mm\","
            + "\"tries\":[\"1.2 %\",\"0.006\"],\"airs\":{\"loft\":\"101.3 kPa\"},\"gauge\":\"3 bar\"}";

    @Test
    void writesAndReadsQuantitiesByTheirDeclaredType() {
        Swatch swatch = new Swatch(
                "dune",
                Grammage.gsm(260),
                Amounts.mm(105),
                List.of(Consistency.percent(1.2), Kinds.CONSISTENCY.of(0.006, "1")),
                Map.of("loft", Kinds.AIR_PRESSURE.of(101.3, "kPa")),
                GaugePressure.bar(3));

        assertThat(MAPPER.writeValueAsString(swatch)).isEqualTo(TEXT);
        Swatch read = MAPPER.readValue(TEXT, Swatch.class);
        assertThat(read).isEqualTo(swatch);
        assertThat(((Amount<Pressure>) read.airs().get("loft")).kind()).isEqualTo(Kinds.AIR_PRESSURE);
        assertThat(read.gauge().kind()).isEqualTo(Kinds.GAUGE_PRESSURE);
    }

    @Test
    void readsTheFormInPartsAndReamWeights() {
        TypeReference<Amount<Grammage>> type = new TypeReference<>() {};
        assertThat(MAPPER.readValue("{\"value\": 260, \"unit\": \"g/m2\"}", type))
                .isEqualTo(Grammage.gsm(260));
        assertThat(MAPPER.readValue("{\"weight\": \"80 lb\", \"sheet\": [\"20 in\", \"26 in\"], \"count\": 500}", type)
                        .isWithin(ReamBasis.COVER.pounds(80), 1e-12))
                .isTrue();
    }

    @Test
    void goesThroughATree() {
        assertThat(MAPPER.treeToValue(MAPPER.readTree(TEXT), Swatch.class).grammage())
                .isEqualTo(Grammage.gsm(260));
    }

    @Test
    void readsEveryKindByItsType() {
        for (Kind<?> kind : Kinds.all()) {
            String code = kind.codes().get(0);
            String text = code.equals("1") ? "\"0.25\"" : "\"0.25 " + code + "\"";
            Amount<?> amount =
                    MAPPER.readValue(text, MAPPER.getTypeFactory().constructParametricType(Amount.class, kind.type()));
            assertThat(amount.kind()).isSameAs(kind);
            assertThat(MAPPER.writeValueAsString(amount)).isEqualTo(text);
        }
    }

    @Test
    void writesQuantitiesOfOthersWhereTheTypeIsDeclared() {
        record Side(Quantity<Length> side) {}

        Quantity<Length> others =
                ServiceProvider.current().getQuantityFactory(Length.class).create(12.5, Kinds.LENGTH.siUnit());

        assertThat(MAPPER.writeValueAsString(new Side(others))).isEqualTo("{\"side\":\"12.5 m\"}");
        assertThatThrownBy(() -> MAPPER.writeValueAsString(others))
                .isInstanceOf(JacksonException.class)
                .hasMessageContaining("does not state its kind");
    }

    @Test
    void failsAtTheFirstFaultWithItsCause() {
        InvalidFormatException wrong = catchThrowableOfType(
                InvalidFormatException.class, () -> MAPPER.readValue(TEXT.replace("260 g/m2", "260 mm"), Swatch.class));
        assertThat(wrong).hasMessageContaining("not a unit of grammage").cause().isInstanceOf(Refused.class);
        assertThat(wrong.getValue()).isEqualTo("260 mm");
        assertThat(wrong.getPathReference()).contains("grammage");

        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("105 mm", "3 pt"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class)
                .cause()
                .isInstanceOf(Unclear.class);
        assertThatThrownBy(() -> MAPPER.readValue(TEXT.replace("\"260 g/m2\"", "260"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class)
                .hasMessageContaining("without a unit");
        assertThatThrownBy(() -> MAPPER.readValue(
                        TEXT.replace("\"260 g/m2\"", "{\"value\": 1e400, \"unit\": \"g/m2\"}"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class)
                .cause()
                .isInstanceOf(DocumentException.class);
        assertThatThrownBy(() -> MAPPER.readValue(
                        TEXT.replace("\"260 g/m2\"", "{\"value\": 1, \"unit\": \"g/m2\", \"x-a\": 1}"), Swatch.class))
                .isInstanceOf(InvalidFormatException.class);
        assertThatThrownBy(() -> MAPPER.readValue("{\"anything\": \"260 g/m2\"}", Open.class))
                .isInstanceOf(JacksonException.class)
                .hasMessageContaining("declare the type");
    }

    record Notebook(
            Air room,
            Fibre fibre,
            Furnish furnish,
            List<Format> formats,
            Reading<Mass> weighed,
            Map<String, Reading<Length>> sizes) {}

    @Test
    void writesAndReadsSmallValuesAsDocumentsDo() {
        Fibre reed = Fibre.of("my-reed", "my reed", Fibre.SourceClass.GRASS, "straw");
        Notebook notebook = new Notebook(
                Air.of(Amounts.celsius(18), RelativeHumidity.percent(60)),
                reed,
                Furnish.of(Share.percent(30), Fibres.KOZO, Share.percent(70), reed),
                List.of(
                        Formats.ISO_A5,
                        Format.of(
                                "card", FormatSystem.TRADITIONAL, Format.Use.CARD, Amounts.mm(90), Amounts.inches(2))),
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
        assertThat(MAPPER.treeToValue(MAPPER.valueToTree(notebook), Notebook.class))
                .isEqualTo(notebook);
        for (String[] wrong : new String[][] {
            {"18 Cel", "180 Cel"},
            {"\"kozo\"", "\"kosho\""},
            {"70 %", "60 %"},
            {"ISO A5", "A6"},
            {"0.1 g", "0.1 mm"},
            {"\"humidity\"", "\"x-own\":1,\"humidity\""},
            {"\"error\":\"0.5 mm\"", "\"eror\":\"0.5 mm\""}
        }) {
            assertThat(text).contains(wrong[0]);
            assertThatThrownBy(() -> MAPPER.readValue(text.replace(wrong[0], wrong[1]), Notebook.class))
                    .as(wrong[1])
                    .isInstanceOf(InvalidFormatException.class)
                    .cause()
                    .isInstanceOf(DocumentException.class);
        }
        assertThatThrownBy(() -> MAPPER.readValue("{\"read\":\"1 g\",\"error\":\"1 g\"}", Reading.class))
                .isInstanceOf(JacksonException.class)
                .hasMessageContaining("declare the type");
    }

    @Test
    void holdsTheLimitsOfDocuments() {
        TypeReference<Amount<Length>> type = new TypeReference<>() {};
        for (String text : List.of(
                "\"1e-400 m\"",
                "\"1" + " ".repeat(200) + "m\"",
                "\"1e400 m\"",
                "\"1e307 km\"",
                "{\"value\": 1e307, \"unit\": \"km\"}",
                "\"" + "1".repeat(5000) + " m\"")) {
            assertThatThrownBy(() -> MAPPER.readValue(text, type))
                    .as(text)
                    .isInstanceOf(InvalidFormatException.class)
                    .hasMessageMatching("(?s).*(too|at most|finite).*");
        }
        assertThat(MAPPER.readValue("\"0.0 m\"", type).value()).isZero();
    }

    @Test
    void writesAndReadsTheBasisOfAReam() {
        String cover = "{\"name\":\"cover\",\"sheet\":[\"20 in\",\"26 in\"],\"count\":500}";

        assertThat(MAPPER.writeValueAsString(ReamBasis.COVER)).isEqualTo(cover);
        assertThat(MAPPER.readValue(cover, ReamBasis.class)).isEqualTo(ReamBasis.COVER);
        assertThatThrownBy(() -> MAPPER.readValue(cover.replace("26", "27"), ReamBasis.class))
                .isInstanceOf(InvalidFormatException.class)
                .hasMessageContaining("based on a sheet");
        assertThatThrownBy(() -> MAPPER.readValue(cover.replace(",\"count\":500", ""), ReamBasis.class))
                .isInstanceOf(InvalidFormatException.class)
                .hasMessageContaining("count");
    }

    @Test
    void isFoundAndSaysItsVersion() throws IOException {
        JsonMapper found = JsonMapper.builder().findAndAddModules().build();
        assertThat(found.writeValueAsString(Grammage.gsm(260))).isEqualTo("\"260 g/m2\"");
        assertThat(found.registeredModules())
                .filteredOn(PapermathModule.class::isInstance)
                .hasSize(1);
        assertThat(JsonMapper.builder()
                        .findAndAddModules()
                        .addModule(new PapermathModule())
                        .build()
                        .registeredModules())
                .filteredOn(PapermathModule.class::isInstance)
                .hasSize(1);

        String pom = Files.readString(Path.of("pom.xml"));
        Version version = new PapermathModule().version();
        assertThat(pom)
                .contains("<version>" + version.getMajorVersion() + "." + version.getMinorVersion() + "."
                        + version.getPatchLevel() + (version.isSnapshot() ? "-SNAPSHOT" : "") + "</version>")
                .contains("<groupId>" + version.getGroupId() + "</groupId>")
                .contains("<artifactId>" + version.getArtifactId() + "</artifactId>");
        assertThat(version.isUnknownVersion()).isFalse();
    }

    private static Path home(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static final List<Path> JARS = Stream.of(
                    PapermathModule.class,
                    Amount.class,
                    JsonMapper.class,
                    JacksonException.class,
                    JsonFormat.class,
                    Quantity.class)
            .map(PapermathModuleTest::home)
            .toList();

    @Test
    void isFoundOnTheClassPath() throws IOException, ReflectiveOperationException {
        List<URL> urls = new ArrayList<>();
        for (Path jar : JARS) {
            urls.add(jar.toUri().toURL());
        }
        try (URLClassLoader path = new URLClassLoader(urls.toArray(URL[]::new), null)) {
            Object found = path.loadClass(MapperBuilder.class.getName())
                    .getMethod("findModules", ClassLoader.class)
                    .invoke(null, path);
            assertThat((List<?>) found).singleElement().satisfies(one -> {
                assertThat(one.getClass().getName()).isEqualTo(PapermathModule.class.getName());
                assertThat(one.getClass().getModule().isNamed()).isFalse();
            });
        }
    }

    @Test
    void isProvidedByItsModule() {
        ModuleDescriptor module = ModuleFinder.of(home(PapermathModule.class))
                .find("org.papermath.json")
                .orElseThrow()
                .descriptor();
        assertThat(module.provides()).singleElement().satisfies(one -> {
            assertThat(one.service()).isEqualTo(JacksonModule.class.getName());
            assertThat(one.providers()).containsExactly(PapermathModule.class.getName());
        });
    }

    private static MakingPlan plan() {
        OrderDocument concert = Concert.read().value();
        return MakingPlan.of(concert.order(), concert.studio());
    }

    record Held(Object value) {}

    @Test
    void refusesWhatHasADocumentOfItsOwn() {
        MakingPlan plan = plan();
        Recipe recipe = plan.order().recipes().get(0);
        Map<Object, String> doors = new LinkedHashMap<>();
        doors.put(plan.order(), "PapermathDocuments.writeOrder");
        doors.put(recipe, "PapermathDocuments.writeRecipe");
        doors.put(plan.studio(), "PapermathDocuments.writeStudio");
        doors.put(PapermathDocuments.readRecord(Batch.RECORD).value(), "PapermathDocuments.writeRecord");
        doors.put(plan, "PapermathDocuments.writePlan");
        doors.put(PapermathDocuments.readPrices(Shop.PRICES).value(), "PapermathDocuments.writePrices");
        doors.put(PapermathDocuments.readQuotation(Shop.QUOTATION).value(), "PapermathDocuments.writeQuotation");
        doors.put(plan.pieces().get(0), "PapermathDocuments.writePlan");
        doors.put(Concert.read().value(), "PapermathDocuments.writeOrder");
        doors.put(Concert.read(), "PapermathDocuments");
        doors.put(PressingModel.standard(), "Estimate");
        doors.put(Order.of("menus"), "Build it first");
        doors.forEach((value, door) -> {
            for (Object within : List.of(
                    value,
                    List.of(value),
                    Map.of("a", value),
                    Optional.of(value),
                    new Object[] {value},
                    new Held(value),
                    WithNotices.of(value))) {
                assertThatThrownBy(() -> MAPPER.writeValueAsString(within))
                        .as(door)
                        .isInstanceOf(InvalidDefinitionException.class)
                        .hasMessageContaining(door)
                        .cause()
                        .isInstanceOfSatisfying(
                                Refused.class,
                                refused -> assertThat(refused.code()).isEqualTo("jackson.not-written"));
            }
            for (String text : List.of("{}", "\"midwinter\"", "[]", "{\"name\":\"a\"}")) {
                assertThatThrownBy(() -> MAPPER.readValue(text, value.getClass()))
                        .as(text)
                        .isInstanceOf(InvalidDefinitionException.class)
                        .hasMessageContaining(door)
                        .cause()
                        .isInstanceOfSatisfying(
                                Refused.class,
                                refused -> assertThat(refused.code()).isEqualTo("jackson.not-read"));
            }
        });
        assertThatThrownBy(() -> MAPPER.writeValueAsString(Map.of("order", plan.order())))
                .hasMessageStartingWith("the Jackson module does not write Order. Write an order with"
                        + " PapermathDocuments.writeOrder and read it with readOrder.");
    }

    @Test
    void writesAndReadsEstimates() {
        Estimate<Mass> bare = Estimate.of(Amounts.grams(214), Amounts.grams(203), Amounts.grams(226), List.of())
                .withScatter(0.08);
        String text = "{\"likely\":\"214 g\",\"low\":\"203 g\",\"high\":\"226 g\",\"scatter\":\"8 %\"}";
        TypeReference<Estimate<Mass>> type = new TypeReference<>() {};
        assertThat(MAPPER.writeValueAsString(bare)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, type)).isEqualTo(bare);
        for (double scatter : new double[] {1.0 / 3, 0.07, 0.29, 1e-9}) {
            assertThat(MAPPER.readValue(MAPPER.writeValueAsString(bare.withScatter(scatter)), type)
                            .scatter())
                    .contains(scatter);
        }
        Estimate<Grammage> full = plan().pieces().get(0).finished().grammage();
        assertThat(full.drivers()).isNotEmpty();
        Estimate<Grammage> read = MAPPER.readValue(MAPPER.writeValueAsString(full), new TypeReference<>() {});
        assertThat(read).isEqualTo(full);
        assertThat(read.drivers().get(0).assumption().source())
                .isEqualTo(full.drivers().get(0).assumption().source());
        for (String[] wrong : new String[][] {
            {"203 g", "215 g"}, {"203 g", "203 mm"}, {"8 %", "-8 %"}, {"\"low\":\"203 g\",", ""}, {"scatter", "scater"}
        }) {
            assertThatThrownBy(() -> MAPPER.readValue(text.replace(wrong[0], wrong[1]), type))
                    .as(wrong[1])
                    .isInstanceOf(InvalidFormatException.class)
                    .cause()
                    .isInstanceOf(DocumentException.class);
        }
        assertThatThrownBy(() -> MAPPER.readValue(text, Estimate.class)).hasMessageContaining("declare the type");
    }

    @Test
    void writesAndReadsNotices() {
        Notice notice = Notice.warning(
                "post.heavy",
                "A post is heavy.",
                "mass",
                Amounts.kilograms(31),
                "people",
                2,
                "ratio",
                3.0,
                "of",
                List.of("a", 1),
                "lifted",
                false,
                "limit",
                "23 kg",
                "far",
                5_000_000_000L);
        String text = "{\"level\":\"warning\",\"code\":\"post.heavy\",\"text\":\"A post is heavy.\",\"arguments\":{"
                + "\"mass\":{\"kind\":\"mass\",\"amount\":\"31 kg\"},\"people\":2,\"ratio\":3.0,\"of\":[\"a\",1],"
                + "\"lifted\":false,\"limit\":\"23 kg\",\"far\":5000000000}}";
        assertThat(MAPPER.writeValueAsString(notice)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, Notice.class)).isEqualTo(notice);
        assertThat(MAPPER.writeValueAsString(List.of(Notice.note("a.b", "Look."))))
                .isEqualTo("[{\"level\":\"note\",\"code\":\"a.b\",\"text\":\"Look.\"}]");
        assertThatThrownBy(() -> MAPPER.readValue(text.replace("\"warning\"", "\"loud\""), Notice.class))
                .isInstanceOf(InvalidFormatException.class)
                .hasMessageContaining("Accepted: note, warning");
        assertThatThrownBy(() -> MAPPER.readValue(text.replace("31 kg", "31 mm"), Notice.class))
                .isInstanceOf(InvalidFormatException.class);
        TypeReference<WithNotices<Amount<Mass>>> noted = new TypeReference<>() {};
        WithNotices<Amount<Mass>> pair = WithNotices.of(Amounts.grams(3), notice);
        assertThat(MAPPER.readValue(MAPPER.writeValueAsString(pair), noted)).isEqualTo(pair);
    }

    @Test
    void writesStagesDoneAndNotDone() {
        MakingPlan plan = plan();
        assertThat(MAPPER.writeValueAsString(plan.pieces().get(0).pressStage()))
                .startsWith("{\"done\":true,\"content\":{\"press\":{\"name\":\"long press\"")
                .contains("\"force\":\"");
        List<String> stages = plan.pieces().stream()
                .map(piece -> MAPPER.writeValueAsString(piece.envelopeStage()))
                .toList();
        assertThat(stages)
                .anySatisfy(text -> assertThat(text)
                        .startsWith("{\"done\":false,\"code\":\"")
                        .contains("\"reason\":\""));
        assertThatThrownBy(() -> MAPPER.readValue(stages.get(0), Stage.class))
                .hasMessageContaining("Only a plan makes stages")
                .hasMessageContaining("Estimate<Mass>");
        assertThat(plan.pieces())
                .anySatisfy(piece -> assertThat(MAPPER.writeValueAsString(piece.mailStage()))
                        .contains("\"verdict\":{\"service\":\""));
    }

    record Filling(
            int afterSheet,
            Amount<Volume> strained,
            Amount<Volume> pail,
            Amount<Volume> stock,
            Amount<Volume> water,
            Amount<Volume> bail) {}

    @Test
    void writesThePartsOfAPlanByTheirMembersAndLeavesTheReadingToOthers() {
        List<VatPlan.Recharge> recharges = plan().pieces().get(0).vat().recharges();
        VatPlan.Recharge first = recharges.get(0);
        String text = "{\"afterSheet\":" + first.afterSheet() + ",\"strained\":\"" + Units.print(first.strained())
                + "\",\"pail\":\"" + Units.print(first.pail())
                + "\",\"stock\":\"" + Units.print(first.stock())
                + "\",\"water\":\"" + Units.print(first.water()) + "\",\"bail\":\"" + Units.print(first.bail())
                + "\"}";
        assertThat(MAPPER.writeValueAsString(first)).isEqualTo(text);
        assertThat(MAPPER.writerFor(VatPlan.Recharge.class).writeValueAsString(first))
                .isEqualTo(text);
        assertThat(MAPPER.writeValueAsString(recharges)).startsWith("[" + text + ",");
        assertThat(JsonMapper.builder()
                        .addModule(new PapermathModule())
                        .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
                        .build()
                        .writeValueAsString(first))
                .startsWith("{\"after_sheet\":");
        assertThat(MAPPER.writeValueAsString(plan().batches().get(0).balances().get(0)))
                .startsWith("{\"substance\":\"fibre\",\"in\":{")
                .doesNotContain("total");
        assertThat(MAPPER.readValue(text, Filling.class))
                .isEqualTo(new Filling(
                        first.afterSheet(),
                        first.strained(),
                        first.pail(),
                        first.stock(),
                        first.water(),
                        first.bail()));
        for (Class<?> type : List.of(VatPlan.Recharge.class, first.getClass())) {
            assertThatThrownBy(() -> MAPPER.readValue(text, type))
                    .isInstanceOf(InvalidDefinitionException.class)
                    .hasMessageStartingWith("the Jackson module does not read VatPlan.Recharge. Only the library"
                            + " makes one. Read its members as members of a type of your own");
        }
        PiecePlan whole = plan().pieces().get(0);
        assertThatThrownBy(() -> MAPPER.writeValueAsString(whole))
                .hasMessageStartingWith("the Jackson module does not write PiecePlan. Write the whole plan with");
    }

    @Test
    void writesAndReadsOutlines() {
        Outline outline = Outline.of(
                Outline.Point.of(Amounts.mm(0), Amounts.mm(0)),
                Outline.Point.of(Amounts.mm(105), Amounts.mm(0)),
                Outline.Point.of(Amounts.mm(52.5), Amounts.mm(148)));
        String text =
                "{\"corners\":[{\"across\":\"0 mm\",\"along\":\"0 mm\"},{\"across\":\"105 mm\",\"along\":\"0 mm\"},"
                        + "{\"across\":\"52.5 mm\",\"along\":\"148 mm\"}]}";
        assertThat(MAPPER.writeValueAsString(outline)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, Outline.class)).isEqualTo(outline);
        assertThatThrownBy(() -> MAPPER.readValue(text.replace("148 mm", "0 mm"), Outline.class))
                .cause()
                .isInstanceOf(DocumentException.class);
    }

    record Words(
            Basis basis,
            Set<EnvelopeStyle> styles,
            Map<Basis, Integer> counts,
            EnumMap<Basis, String> notes,
            FormatSystem[] systems) {}

    @Test
    void writesAndReadsTheWordsOfDocuments() {
        Words words = new Words(
                Basis.COMMON_PRACTICE,
                EnumSet.of(EnvelopeStyle.SIDE_SEAM),
                Map.of(Basis.MEASURED_HERE, 2),
                new EnumMap<>(Map.of(Basis.ANCHORED, "a")),
                new FormatSystem[] {FormatSystem.TRADITIONAL});
        String text = "{\"basis\":\"common practice\",\"styles\":[\"side seam\"],\"counts\":{\"measured here\":2},"
                + "\"notes\":{\"anchored\":\"a\"},\"systems\":[\"" + FormatSystem.TRADITIONAL.words() + "\"]}";
        assertThat(MAPPER.writeValueAsString(words)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, Words.class))
                .usingRecursiveComparison()
                .isEqualTo(words);
        assertThatThrownBy(() -> MAPPER.readValue(text.replace("common practice", "comon practice"), Words.class))
                .isInstanceOf(InvalidFormatException.class)
                .hasMessageContaining("Did you mean \"common practice\"?");
        assertThatThrownBy(() -> MAPPER.readValue(text.replace("measured here", "measured"), Words.class))
                .isInstanceOf(JacksonException.class)
                .hasMessageContaining("Accepted: definition");
    }

    @Test
    void refusesQuantitiesAndThingsAsNamesOfMembers() {
        assertThatThrownBy(() -> MAPPER.writeValueAsString(Map.of(Amounts.grams(1.23456789), "a")))
                .isInstanceOf(InvalidDefinitionException.class)
                .hasMessageContaining("cannot be the name of a member");
        assertThatThrownBy(() -> MAPPER.writeValueAsString(Map.of(Fibres.KOZO, 1)))
                .isInstanceOf(InvalidDefinitionException.class)
                .hasMessageContaining("type Fibre cannot be the name");
        assertThatThrownBy(() -> MAPPER.readValue("{\"kozo\":1}", new TypeReference<Map<Fibre, Integer>>() {}))
                .isInstanceOf(JacksonException.class)
                .hasMessageContaining("type Fibre cannot be the name");
    }

    @Test
    void readsRecordsWithAllTheirComponentsOnly() {
        Press.Part part = new Press.Part("frame", Amounts.kilonewtons(40));
        String text = "{\"name\":\"frame\",\"rating\":\"40 kN\"}";
        assertThat(MAPPER.writeValueAsString(part)).isEqualTo(text);
        assertThat(MAPPER.readValue(text, Press.Part.class)).isEqualTo(part);
        for (String wrong : List.of("{\"name\":\"frame\"}", "{\"name\":null,\"rating\":\"40 kN\"}")) {
            assertThatThrownBy(() -> MAPPER.readValue(wrong, Press.Part.class))
                    .as(wrong)
                    .isInstanceOf(JacksonException.class);
        }
        assertThatThrownBy(() -> MAPPER.readValue("{\"text\":\" \"}", Source.class))
                .isInstanceOf(JacksonException.class)
                .hasRootCauseInstanceOf(Refused.class);
        assertThatThrownBy(
                        () -> MAPPER.readValue("{\"kind\":\"boards\",\"name\":\"a\",\"capacity\":4}", Dryer.Loft.class))
                .hasMessageContaining("Loft is expected here; Boards is written");
    }

    @Test
    void writesRefusalsAndFaultsForPrograms() {
        Refused refused = Refused.of("a.b", "No.", "given", "1 g");
        assertThat(MAPPER.writeValueAsString(refused))
                .isEqualTo("{\"code\":\"a.b\",\"text\":\"No.\",\"arguments\":{\"given\":\"1 g\"}}");
        assertThat(MAPPER.writeValueAsString(catchThrowableOfType(Unclear.class, () -> Kinds.FORCE.read("20 ton"))))
                .contains("\"candidates\":[{\"meaning\":\"");
        assertThatThrownBy(() -> MAPPER.readValue("{\"code\":\"a.b\",\"text\":\"No.\"}", Refused.class))
                .hasMessageContaining("A refusal is thrown, not read");
        DocumentException faults =
                catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readRecipe("{}"));
        assertThat(MAPPER.writeValueAsString(faults))
                .startsWith("{\"faults\":[{")
                .contains("\"code\":\"");
        Fault fault = faults.faults().get(0);
        assertThat(MAPPER.readValue(MAPPER.writeValueAsString(fault), Fault.class))
                .isEqualTo(fault);
    }

    @Test
    void leavesATypeToAModuleAddedAfterIt() {
        SimpleModule own = new SimpleModule("own").addSerializer(Order.class, new ValueSerializer<Order>() {
            @Override
            public void serialize(Order value, JsonGenerator out, SerializationContext context) {
                out.writeString(value.name());
            }
        });
        JsonMapper mapper = JsonMapper.builder()
                .addModule(new PapermathModule())
                .addModule(own)
                .build();
        assertThat(mapper.writeValueAsString(List.of(plan().order()))).isEqualTo("[\"spring concert\"]");
    }
}
