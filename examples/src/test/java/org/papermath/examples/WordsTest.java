package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.mm;

import java.io.IOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReader;
import java.lang.module.ModuleReference;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.drawing.SvgDrawing;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.json.PapermathDocuments;
import org.papermath.json.PapermathSchemas;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Grammage;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Outline;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every word that people meet stands in the list of words with its origin, and none that they no longer meet. */
class WordsTest {
    private static final String LIST = "site/words.csv";
    private static final String PREFIX = "org.papermath.";
    private static final Pattern ROW = Pattern.compile("((?:\"[^\"]*\")|[^,\"]*),(type|member|label|drawing),"
            + "(standard: [^,\"]+|\"standard: [^\"]+\"|trade|ours),(\"(?:[^\"]|\"\")+\"|[^,\"]+)");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Test
    void everyRowIsWellFormedAndHasAnOrigin() {
        List<String> lines = lines();
        assertThat(lines.get(0)).isEqualTo("word,kind,origin,note");
        assertThat(lines.subList(1, lines.size()))
                .allSatisfy(line -> assertThat(line).matches(ROW))
                .doesNotHaveDuplicates();
    }

    @Test
    void everyPublicTypeIsListed() throws Exception {
        Set<String> types = new TreeSet<>();
        types.addAll(publicTypes(MakingPlan.class));
        types.addAll(publicTypes(PapermathDocuments.class));
        assertThat(types).hasSizeGreaterThan(200);
        assertThat(listed("type")).containsExactlyInAnyOrderElementsOf(types);
    }

    @Test
    void everyMemberOfADocumentIsListed() {
        Set<String> members = members();
        assertThat(members).hasSizeGreaterThan(150);
        assertThat(listed("member")).containsExactlyInAnyOrderElementsOf(members);
    }

    @Test
    void theSampleDocumentsUseNoOtherMembers() throws IOException {
        Set<String> members = members();
        Path folder = Pages.file("examples/src/main/resources/org/papermath/examples/midwinter-concert");
        Set<String> used = new TreeSet<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : (Iterable<Path>) files::iterator) {
                Matcher name = Pattern.compile("\"([^\"]+)\"\\s*:").matcher(Files.readString(file));
                while (name.find()) {
                    used.add(name.group(1));
                }
            }
        }
        String plan = PapermathDocuments.writePlan(MakingPlan.of(Embed.order(), Embed.studio()), "test", "0")
                // The accounts of a balance are names of places, not members.
                .replaceAll("\"(?:in|out)\": \\{[^}]*\\}", "");
        Matcher name = Pattern.compile("(?m)^\\s*\"([A-Za-z]+)\": ").matcher(plan);
        while (name.find()) {
            used.add(name.group(1));
        }
        assertThat(used).hasSizeGreaterThan(50);
        assertThat(members).containsAll(used);
    }

    @Test
    void everyLabelOfTheCardIsListed() {
        assertThat(listed("label")).containsExactlyInAnyOrderElementsOf(MakingCard.labels());
    }

    @Test
    void everyWordOfADrawingIsListed() {
        Set<String> drawn = new TreeSet<>();
        for (EnvelopeStyle style : EnvelopeStyle.values()) {
            drawn.addAll(words(
                    SvgDrawing.of("x", Envelope.forCard(style, mm(148), mm(105), mm(0.4), Assumptions.standard()))));
        }
        drawn.addAll(words(SvgDrawing.of(
                "x",
                CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), EnumSet.allOf(CutLayout.Edge.class)))));
        shaped().pieces()
                .forEach(piece -> drawn.addAll(
                        words(piece.forming().shapedDeckle().orElseThrow().drawing())));
        assertThat(listed("drawing")).containsExactlyInAnyOrderElementsOf(drawn);
    }

    /** Pieces formed to their outline, as wide as the foot of a drawing, so that it stands in one line. */
    private static MakingPlan shaped() {
        return MakingPlan.withoutBands(
                Order.of("x")
                        .recipe(Recipe.of("r", Furnish.of(Fibres.COTTON_RAG)).build())
                        .piece(Piece.of("x", 1, "r")
                                .formedTo(Outline.round(mm(260)))
                                .grammage(Grammage.gsm(100))
                                .build())
                        .piece(Piece.of("y", 1, "r")
                                .envelopeFor("x", EnvelopeStyle.SIDE_SEAM)
                                .edge(Piece.Edge.SHAPED)
                                .grammage(Grammage.gsm(100))
                                .build())
                        .build(),
                Studio.of("x").build());
    }

    /** The texts of a drawing that are words; sizes and the title are left out. */
    private static Set<String> words(SvgDrawing drawing) {
        Set<String> words = new TreeSet<>();
        Matcher text = Pattern.compile("<text[^>]*>([^<]+)</text>").matcher(drawing.svg());
        while (text.find()) {
            String word = text.group(1);
            if (!word.matches("x|[0-9.]+( mm)?|.* \u00d7 .*")) {
                words.add(word);
            }
        }
        return words;
    }

    private static List<String> lines() {
        return Pages.text(LIST).lines().toList();
    }

    private static List<String> listed(String kind) {
        List<String> words = new ArrayList<>();
        for (String line : lines()) {
            Matcher row = ROW.matcher(line);
            if (row.matches() && row.group(2).equals(kind)) {
                words.add(row.group(1).replace("\"", ""));
            }
        }
        return words;
    }

    /** Reads the member names out of the schemas, in which each is described. */
    private static Set<String> members() {
        Set<String> members = new TreeSet<>();
        for (String name : PapermathSchemas.names()) {
            addMembers(MAPPER.readTree(PapermathSchemas.text(name)), members);
        }
        return members;
    }

    private static void addMembers(JsonNode schema, Set<String> members) {
        members.addAll(schema.path("properties").propertyNames());
        schema.forEach(part -> addMembers(part, members));
    }

    private static Set<String> publicTypes(Class<?> ofModule)
            throws IOException, URISyntaxException, ClassNotFoundException {
        Path place = Path.of(
                ofModule.getProtectionDomain().getCodeSource().getLocation().toURI());
        ModuleReference module = ModuleFinder.of(place).findAll().iterator().next();
        Set<String> exported = new HashSet<>();
        module.descriptor().exports().stream()
                .filter(one -> !one.isQualified())
                .map(ModuleDescriptor.Exports::source)
                .forEach(exported::add);
        Set<String> types = new TreeSet<>();
        try (ModuleReader reader = module.open();
                Stream<String> names = reader.list()) {
            for (String file : (Iterable<String>) names::iterator) {
                if (!file.endsWith(".class") || file.endsWith("-info.class")) {
                    continue;
                }
                String name =
                        file.substring(0, file.length() - ".class".length()).replace('/', '.');
                if (exported.contains(name.substring(0, name.lastIndexOf('.')))) {
                    Class<?> type = Class.forName(name, false, ofModule.getClassLoader());
                    if (isPublic(type)) {
                        types.add(type.getCanonicalName().substring(PREFIX.length()));
                    }
                }
            }
        }
        return types;
    }

    private static boolean isPublic(Class<?> type) {
        for (Class<?> one = type; one != null; one = one.getEnclosingClass()) {
            if (!Modifier.isPublic(one.getModifiers()) || one.isAnonymousClass()) {
                return false;
            }
        }
        return true;
    }
}
