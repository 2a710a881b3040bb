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
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;
import org.papermath.shape.CutLayout;

/** Every word that people meet stands in the list of words with its origin, and none that they no longer meet. */
class WordsTest {
    private static final String LIST = "site/words.csv";
    private static final String PREFIX = "org.papermath.";
    private static final Pattern ROW = Pattern.compile("((?:\"[^\"]*\")|[^,\"]*),(type|member|label|drawing),"
            + "(standard: [^,\"]+|\"standard: [^\"]+\"|trade|ours),(\"(?:[^\"]|\"\")+\"|[^,\"]+)");
    private static final Pattern MEMBER =
            Pattern.compile("\\b(?:required|optional|member|has)\\((?:\"([A-Za-z]+)\"|([A-Z_]+))\\)"
                    + "|\\bobjects\\(\\w+, \"([A-Za-z]+)\"|\\b(?:required|optional|place)\\(in, \"([A-Za-z]+)\"");
    /** What is written for documents of one's own has members that no document of the library has. */
    private static final Set<String> OF_THE_MODULE = Set.of("PapermathModule.java", "EvidenceMapping.java");

    private static final Pattern CONSTANT = Pattern.compile("static final String ([A-Z_]+) = \"([^\"]*)\"");

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
    void everyMemberOfADocumentIsListed() throws IOException {
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
        assertThat(listed("drawing")).containsExactlyInAnyOrderElementsOf(drawn);
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

    /** Reads the member names out of the mappings, where each is written as a text. */
    private static Set<String> members() throws IOException {
        Set<String> members = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Pages.file("papermath-json/src/main/java/org/papermath/json"))) {
            for (Path file : (Iterable<Path>) files::iterator) {
                String name = file.getFileName().toString();
                if (OF_THE_MODULE.contains(name) || !name.endsWith(".java")) {
                    continue;
                }
                String code = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "");
                Map<String, String> constants = new HashMap<>();
                Matcher constant = CONSTANT.matcher(code);
                while (constant.find()) {
                    constants.put(constant.group(1), constant.group(2));
                }
                Matcher member = MEMBER.matcher(code);
                while (member.find()) {
                    String word = member.group(1) != null
                            ? member.group(1)
                            : member.group(2) != null
                                    ? constants.get(member.group(2))
                                    : member.group(3) != null ? member.group(3) : member.group(4);
                    if (word != null) {
                        members.add(word);
                    }
                }
            }
        }
        return members;
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
