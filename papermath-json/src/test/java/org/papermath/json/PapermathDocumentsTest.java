package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;

class PapermathDocumentsTest {
    @Test
    void readsEveryMemberOfAnOrder() {
        Order order = Concert.read().value().order();

        assertThat(order.name()).isEqualTo("spring concert");
        assertThat(order.due()).contains(LocalDate.of(2027, 4, 9));
        assertThat(order.weighedIn().humidity().in("%")).isEqualTo(65);
        assertThat(order.recipes()).hasSize(1);

        Piece programme = order.pieces().get(0);
        assertThat(programme.format()).contains(Formats.ISO_A5);
        assertThat(programme.grammage()).contains(Grammage.gsm(130));
        assertThat(programme.spare().orElseThrow().in("%")).isEqualTo(12);
        assertThat(programme.kept()).isEqualTo(2);
        assertThat(programme.trials()).hasValue(3);
        assertThat(programme.folds()).isEqualTo(1);
        assertThat(programme.trim()).contains(Amounts.mm(4));
        assertThat(programme.gap()).contains(Amounts.mm(3));
        assertThat(programme.dryer()).contains("loft");

        Piece card = order.pieces().get(1);
        assertThat(card.width()).contains(Amounts.mm(55));
        assertThat(card.height()).contains(Amounts.mm(90));
        assertThat(card.caliper()).contains(Amounts.mm(0.4));
        assertThat(card.edge()).isEqualTo(Piece.Edge.DECKLE);

        Piece envelope = order.pieces().get(2);
        assertThat(envelope.envelopeFor()).contains("programme");
        assertThat(envelope.style()).contains(EnvelopeStyle.SIDE_SEAM);
        assertThat(envelope.inserts()).isEqualTo(2);
        assertThat(envelope.clearance()).contains(Amounts.mm(6));
        assertThat(envelope.mailedIn()).contains("United States");
        assertThat(order.pieces().get(3).sample().orElseThrow().mass()).isEqualTo(Amounts.grams(1.3));
    }

    @Test
    void readsEveryMemberOfARecipe() {
        Recipe recipe = PapermathDocuments.readRecipe(Concert.RECIPE).value();

        Fibre reed = Fibre.of("garden-reed", "garden reed", Fibre.SourceClass.GRASS, "straw", "kraft");
        assertThat(recipe.furnish().share(Fibres.COTTON_RAG).in("%")).isEqualTo(60);
        assertThat(recipe.furnish().share(reed).in("%")).isEqualTo(40);
        assertThat(recipe.beating()).isEqualTo(Amounts.hours(2.5));
        assertThat(recipe.drainability().orElseThrow().value()).isEqualTo(31);
        assertThat(recipe.additives())
                .extracting(dose -> dose.additive().name())
                .containsExactly("china clay", "ochre", "aid", "chalk", "size", "slime", "methyl cellulose");
        assertThat(recipe.additives()
                        .get(4)
                        .additive()
                        .activeFraction()
                        .orElseThrow()
                        .in("%"))
                .isEqualTo(12);
        assertThat(recipe.beaterConsistency().orElseThrow().in("%")).isEqualTo(1.8);
        assertThat(recipe.stockConsistency().orElseThrow().in("%")).isEqualTo(1.6);
        assertThat(recipe.vatConsistency().orElseThrow().in("%")).isEqualTo(0.4);
        assertThat(recipe.sizeBath().orElseThrow().in("g/L")).isEqualTo(30);
    }

    @Test
    void readsEveryMemberOfAStudio() {
        Studio studio = PapermathDocuments.readStudio(Concert.STUDIO).value();

        assertThat(studio.beater().orElseThrow().trough().in("L")).isEqualTo(45);
        assertThat(studio.vat().orElseThrow().temperature().in("Cel")).isEqualTo(24);
        assertThat(studio.moulds().get(1).deckle().along()).isEqualTo(2);
        assertThat(studio.press().orElseThrow().parts()).hasSize(2);
        assertThat(studio.press().orElseThrow().daylight()).contains(Amounts.mm(300));
        assertThat(studio.felts().orElseThrow().count()).isEqualTo(25);
        assertThat(studio.dryers())
                .extracting(dryer -> (Object) dryer.getClass())
                .containsExactly(Dryer.Boards.class, Dryer.Loft.class, Dryer.FanStack.class, Dryer.Blotters.class);
        assertThat(studio.room().pressure().in("kPa")).isEqualTo(98);
        assertThat(studio.onHand()).containsKeys(Fibres.ABACA, Fibres.COTTON_RAG);
        assertThat(studio.scaleStep()).isEqualTo(Amounts.grams(5));
        assertThat(studio.fineScaleStep()).isEqualTo(Amounts.grams(0.01));
        assertThat(studio.jugStep()).isEqualTo(Amounts.millilitres(50));
        assertThat(studio.workingDay()).isEqualTo(Amounts.hours(7));
        assertThat(studio.alsoCustomaryUnits()).isTrue();
        assertThat(studio.assumptions().edition()).isEqualTo("2026-11");
    }

    @Test
    void readsTheStudiosOwnValuesInAnyUnitOfTheirKind() {
        List<Assumption> own = PapermathDocuments.readStudio(Concert.STUDIO)
                .value()
                .assumptions()
                .own();

        Assumption rate = own.stream()
                .filter(one -> one.id().equals("beating.rate"))
                .findFirst()
                .orElseThrow();
        assertThat(rate.scope()).isEqualTo(Scope.of("cotton-rag").on("big beater"));
        assertThat(List.of(rate.likely(), rate.low(), rate.high())).containsExactly(0.12, 0.1, 0.15);
        assertThat(rate.basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(rate.source().text()).isEqualTo("freeness of 3 May");
        Assumption spare = own.stream()
                .filter(one -> one.id().equals("order.spare-share"))
                .findFirst()
                .orElseThrow();
        assertThat(spare.likely()).isEqualTo(0.08);
        assertThat(spare.basis()).isEqualTo(Basis.GIVEN);
        Assumption solids = own.stream()
                .filter(one -> one.id().equals("web.solids-pressed"))
                .findFirst()
                .orElseThrow();
        assertThat(solids.key()).isEqualTo("web.solids-pressed[reed@boards]");
        Assumption density = own.stream()
                .filter(one -> one.id().equals("sheet.density-measured"))
                .findFirst()
                .orElseThrow();
        assertThat(List.of(density.likely(), density.low(), density.high())).containsExactly(520.0, 500.0, 540.0);
    }

    @Test
    void anOrderIsWrittenWithItsReferencesAndReadAgain() {
        Document<OrderDocument> first = Concert.read();
        String written = PapermathDocuments.writeOrder(first);
        Document<OrderDocument> again = PapermathDocuments.readOrder(written, Concert.FILES);

        assertThat(again.value()).isEqualTo(first.value());
        assertThat(written)
                .contains("\"ref\": \"papers/reed.json\"", "\"ref\": \"studio.json\"", "\"x-colour\": \"grey\"");
        assertThat(PapermathDocuments.writeOrder(again)).isEqualTo(written);
    }

    @Test
    void anOrderIsWrittenInFullAndReadAgain() {
        Document<OrderDocument> first = Concert.read();
        String written = PapermathDocuments.writeOrder(first.inlined());
        OrderDocument again = PapermathDocuments.readOrder(written).value();

        assertThat(again.order()).isEqualTo(first.value().order());
        assertThat(again.studio()).isEqualTo(first.value().studio());
        assertThat(PapermathDocuments.writeOrder(Document.of(again)))
                .isEqualTo(PapermathDocuments.writeOrder(Document.of(first.value())));
    }

    @Test
    void recipesAndStudiosAreWrittenAndReadAgainWithTheMembersOfOthers() {
        Document<Recipe> recipe = PapermathDocuments.readRecipe(Concert.RECIPE);
        String recipeText = PapermathDocuments.writeRecipe(recipe);
        assertThat(PapermathDocuments.readRecipe(recipeText).value()).isEqualTo(recipe.value());
        assertThat(recipeText).contains("\"x-note\"", "behind", "the shed");
        Document<Studio> studio = PapermathDocuments.readStudio(Concert.STUDIO);
        String studioText = PapermathDocuments.writeStudio(studio);
        assertThat(PapermathDocuments.readStudio(studioText).value()).isEqualTo(studio.value());
        assertThat(studioText).contains("\"x-built\": 1987");
    }

    @Test
    void whatIsNotSaidIsNotWritten() {
        Recipe plain = PapermathDocuments.readRecipe("""
                {"format": "papermath/recipe", "version": "1.0", "name": "plain",
                 "furnish": [{"fibre": "abaca", "share": "100 %"}]}
                """).value();
        assertThat(PapermathDocuments.writeRecipe(Document.of(plain)))
                .doesNotContain("beating", "additives", "sizeBath");
        Studio bare = Studio.of("a table").build();
        String written = PapermathDocuments.writeStudio(Document.of(bare));
        assertThat(written).doesNotContain("beater", "press", "assumptions");
        assertThat(PapermathDocuments.readStudio(written).value()).isEqualTo(bare);
    }

    @Test
    void readsFilesInTheirFolder(@TempDir Path folder) throws IOException {
        Files.createDirectory(folder.resolve("papers"));
        Files.writeString(folder.resolve("papers/reed.json"), Concert.RECIPE);
        Files.writeString(folder.resolve("studio.json"), Concert.STUDIO);
        Path file = Files.writeString(folder.resolve("order.json"), Concert.ORDER);
        assertThat(PapermathDocuments.readOrder(file).value())
                .isEqualTo(Concert.read().value());
        assertThat(PapermathDocuments.readRecipe(folder.resolve("papers/reed.json"))
                        .value()
                        .name())
                .isEqualTo("reed");
        assertThat(PapermathDocuments.readStudio(folder.resolve("studio.json"))
                        .value()
                        .name())
                .isEqualTo("the boat house");
    }

    @Test
    void theLocaleMakesNoDifference() {
        String expected = PapermathDocuments.writeOrder(Concert.read().inlined());
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("de-DE", "tr-TR", "ar-EG-u-nu-arab")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(PapermathDocuments.writeOrder(Concert.read().inlined()))
                        .isEqualTo(expected);
            }
        } finally {
            Locale.setDefault(before);
        }
    }
}
