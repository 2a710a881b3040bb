package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.record.BatchRecord;
import org.papermath.vat.Vat;

/** What is written can be read; what could not be is refused when it is written. */
class WrittenIsReadTest {
    /** Every name that can be given, written in a document. */
    private static final List<Function<String, String>> NAMES = List.of(
            name -> studio(Studio.of(name)),
            name -> studio(Studio.of("s").beater(Beater.of(name, Amounts.litres(20), Amounts.grams(500)))),
            name -> studio(Studio.of("s").vat(Vat.of(name, Amounts.litres(20)))),
            name -> studio(Studio.of("s").mould(Mould.of(name, Amounts.mm(200), Amounts.mm(300)))),
            name -> studio(
                    Studio.of("s").press(Press.of(name, Kinds.FORCE.of(1, "kN"), Amounts.mm(200), Amounts.mm(200)))),
            name -> studio(Studio.of("s")
                    .press(Press.of("p", Kinds.FORCE.of(1, "kN"), Amounts.mm(200), Amounts.mm(200))
                            .part(name, Kinds.FORCE.of(1, "kN")))),
            name -> studio(Studio.of("s").dryer(Dryer.boards(name, 20))),
            name -> PapermathDocuments.writeRecipe(Document.of(recipe(name).build())),
            name -> PapermathDocuments.writeRecipe(Document.of(recipe("r")
                    .additive(Additive.of(name, Additive.Purpose.FILLER), Kinds.DOSE.of(1, "%"))
                    .build())),
            name -> PapermathDocuments.writeRecipe(Document.of(
                    Recipe.of("r", Furnish.of(Fibre.of("my-reed", name, Fibre.SourceClass.GRASS)))
                            .build())),
            name -> order(Order.of(name).recipe(recipe("r").build()).piece(piece("p"))),
            name -> order(Order.of("o").recipe(recipe("r").build()).piece(piece(name))),
            name -> PapermathDocuments.writeRecord(Document.of(record(name).build())),
            name -> PapermathDocuments.writeRecord(
                    Document.of(record("r").beater(name).build())),
            name -> PapermathDocuments.writeRecord(
                    Document.of(record("r").planned(name, Amounts.mm(1)).build())),
            name -> PapermathDocuments.writeRecipe(
                    Document.of(recipe("r").build()).writtenBy(name, "1")));

    private static String studio(Studio.Builder studio) {
        return PapermathDocuments.writeStudio(Document.of(studio.build()));
    }

    private static String order(Order.Builder order) {
        return PapermathDocuments.writeOrder(
                Document.of(new OrderDocument(order.build(), Studio.of("s").build())));
    }

    private static Recipe.Builder recipe(String name) {
        return Recipe.of(name, Furnish.of(Fibres.ABACA));
    }

    private static Piece piece(String name) {
        return Piece.of(name, 1, "r")
                .size(Amounts.mm(100), Amounts.mm(100))
                .grammage(Grammage.gsm(100))
                .build();
    }

    private static BatchRecord.Builder record(String name) {
        return BatchRecord.builder(name, LocalDate.of(2027, 3, 12));
    }

    private static void read(String text) {
        String format = text.substring(text.indexOf("papermath/") + 10, text.indexOf('"', text.indexOf("papermath/")));
        switch (format) {
            case "order" -> PapermathDocuments.readOrder(text);
            case "recipe" -> PapermathDocuments.readRecipe(text);
            case "studio" -> PapermathDocuments.readStudio(text);
            case "prices" -> PapermathDocuments.readPrices(text);
            case "quotation" -> PapermathDocuments.readQuotation(text);
            default -> PapermathDocuments.readRecord(text);
        }
    }

    @ParameterizedTest
    @CsvSource(
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "small",
                "' small '",
                "smørrebrød 紙",
                "a \"b\" \\c/",
                "LONG",
                "LONGER",
                "'a\tb'",
                "'a\u0007'",
                "'a\u0085'",
                "' '",
                "'a @ b'",
                "'[a]'",
                "'x-own'"
            })
    void everyNameIsReadAgainOrRefused(String given) {
        String name = given.replace("LONGER", "l".repeat(201)).replace("LONG", "l".repeat(200));
        int written = 0;
        for (Function<String, String> one : NAMES) {
            String text;
            try {
                text = one.apply(name);
            } catch (Refused e) {
                assertThat(e.getMessage()).isNotBlank();
                continue;
            }
            written++;
            read(text);
        }
        boolean good =
                name.strip().length() <= 200 && name.chars().noneMatch(Character::isISOControl) && !name.isBlank();
        if (!good) {
            assertThat(written).isZero();
        } else if (!name.contains("@") && !name.contains("[")) {
            assertThat(written).isEqualTo(NAMES.size());
        }
    }

    @Test
    void aNoteMayHaveLinesButAnEnd() {
        BatchRecord lines = record("r").note("one\r\n\ttwo\n").build();
        assertThat(PapermathDocuments.readRecord(PapermathDocuments.writeRecord(Document.of(lines)))
                        .value())
                .isEqualTo(lines);
        for (String note : List.of("n".repeat(100_001), "bell \u0007")) {
            assertThatThrownBy(() -> PapermathDocuments.writeRecord(
                            Document.of(record("r").note(note).build())))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("could not be read again");
        }
        String longest = "n".repeat(100_000);
        assertThat(PapermathDocuments.readRecord(PapermathDocuments.writeRecord(
                                Document.of(record("r").note(longest).build())))
                        .value()
                        .note())
                .isEqualTo(longest);
    }

    @Test
    void moreThanIsReadIsNotWritten() {
        Order.Builder order = Order.of("o").recipe(recipe("r").build());
        for (int i = 0; i < 1000; i++) {
            order.piece(piece("p" + i));
        }
        read(order(order));
        assertThatThrownBy(() -> order(order.piece(piece("one more"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1001 pieces could not be read again; at most 1000");
    }
}
