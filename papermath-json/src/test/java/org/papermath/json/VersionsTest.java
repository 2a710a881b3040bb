package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.json.mapping.OrderMapping;
import org.papermath.json.mapping.PlanMapping;
import org.papermath.json.mapping.PricesMapping;
import org.papermath.json.mapping.QuotationMapping;
import org.papermath.json.mapping.RecordMapping;

/** A document of every version there ever was is kept, and read by every version of the library that says so. */
class VersionsTest {
    static List<Arguments> samples() {
        return List.of(
                sample("1.0", "order", VersionsTest::readOrder),
                sample("1.0", "recipe", PapermathDocuments::readRecipe),
                sample("1.0", "studio", PapermathDocuments::readStudio),
                sample("1.0", "record", PapermathDocuments::readRecord),
                sample("1.0", "plan", PapermathDocuments::readPlan),
                sample("1.0", "prices", PapermathDocuments::readPrices),
                sample("1.0", "quotation", PapermathDocuments::readQuotation));
    }

    private static Arguments sample(String version, String name, Function<String, Document<?>> read) {
        return Arguments.of(version, name, read);
    }

    private static Document<OrderDocument> readOrder(String text) {
        return PapermathDocuments.readOrder(
                text,
                reference -> new DocumentResolver.Found(
                        reference,
                        text(
                                        "1.0",
                                        reference
                                                .replaceAll("^papers/reed", "recipe")
                                                .replace(".json", ""))
                                .getBytes(StandardCharsets.UTF_8),
                        other -> {
                            throw new IOException("no " + other);
                        }));
    }

    static String text(String version, String name) {
        String path = "/versions/" + version + "/" + name + ".json";
        try (InputStream in = VersionsTest.class.getResourceAsStream(path)) {
            assertThat(in).as(path).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everyVersionIsRead(String version, String name, Function<String, Document<?>> read) {
        String text = text(version, name);
        assertThat(text).contains("\"format\": \"papermath/" + name + "\"", "\"version\": \"" + version + "\"");
        Document<?> document = read.apply(text);
        assertThat(document.notes()).isEmpty();
        if (document.value() instanceof OrderDocument order) {
            assertThat(order).isEqualTo(Concert.read().value());
        } else if (document.value() instanceof PlanDocument plan) {
            assertThat(plan.figures())
                    .containsEntry("/pieces/0/name", "programme")
                    .hasSizeGreaterThan(500);
            assertThat(plan.order()).isEqualTo(Concert.read().value().order());
            assertThat(document.writtenBy()).contains(new WrittenBy("papermath", "0.1"));
        } else if (name.equals("recipe")) {
            assertThat(document.value())
                    .isEqualTo(PapermathDocuments.readRecipe(Concert.RECIPE).value());
        } else if (name.equals("prices")) {
            assertThat(document.value())
                    .isEqualTo(PapermathDocuments.readPrices(Shop.PRICES).value());
        } else if (name.equals("quotation")) {
            assertThat(document.value())
                    .isEqualTo(PapermathDocuments.readQuotation(Shop.QUOTATION).value());
        } else if (name.equals("studio")) {
            assertThat(document.value())
                    .isEqualTo(PapermathDocuments.readStudio(Concert.STUDIO).value());
        } else {
            assertThat(document.value())
                    .isEqualTo(PapermathDocuments.readRecord(Batch.RECORD).value());
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aNewerVersionIsRefusedAndBothAreNamed(String version, String name, Function<String, Document<?>> read) {
        for (String newer : List.of("1.1", "2.0", "1.999999")) {
            DocumentException refused = catchThrowableOfType(
                    DocumentException.class,
                    () -> read.apply(text(version, name)
                            .replaceFirst("\"version\": \"" + version + "\"", "\"version\": \"" + newer + "\"")));
            assertThat(refused.faults()).hasSize(1);
            assertThat(refused.faults().get(0).code()).isEqualTo(FaultCodes.VERSION_OTHER);
            assertThat(refused)
                    .hasMessageContaining("version " + newer + " of papermath/" + name)
                    .hasMessageContaining("reads 1.0");
        }
    }

    @Test
    void everyFormatHasASampleOfEveryVersion() {
        for (DocumentFormat format : List.of(
                OrderMapping.ORDER,
                OrderMapping.RECIPE,
                OrderMapping.STUDIO,
                RecordMapping.RECORD,
                PlanMapping.PLAN,
                PricesMapping.PRICES,
                QuotationMapping.QUOTATION)) {
            for (int minor = 0; minor <= format.minor(); minor++) {
                String version = format.major() + "." + minor;
                assertThat(text(version, format.name())).isNotBlank();
                assertThat(samples())
                        .as(format.name() + " " + version)
                        .anyMatch(sample -> sample.get()[0].equals(version) && sample.get()[1].equals(format.name()));
            }
        }
    }
}
