package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;
import org.papermath.plan.MakingPlan;

/**
 * Every code a document can be refused with is either refused by its schema too or on the published list, and every
 * refusal there is in the library is known to be the one, the other, or none of a document.
 */
class FaultCodesTest {
    /** What every fault may have among its values. */
    private static final Set<String> OF_ANY_FAULT = Set.of("found", "accepted", "nearest");

    /** Codes of what is no JSON, or of other files: no schema is asked about them. Each has its test elsewhere. */
    private static final Set<String> OUTSIDE = Set.of(
            FaultCodes.EMPTY,
            FaultCodes.SYNTAX,
            FaultCodes.TRAILING,
            FaultCodes.ENCODING,
            FaultCodes.SIZE,
            FaultCodes.DEPTH,
            FaultCodes.LIMIT,
            FaultCodes.MORE,
            FaultCodes.REFERENCE_NONE,
            FaultCodes.REFERENCE_FORM,
            FaultCodes.REFERENCE_OUTSIDE,
            FaultCodes.REFERENCE_MISSING,
            FaultCodes.REFERENCE_UNREADABLE,
            FaultCodes.REFERENCE_DEPTH);

    /** Codes of formats of one's own, and of the module for Jackson; the documents of the library have no such part. */
    private static final Set<String> OF_OTHERS = Set.of(FaultCodes.NAME, "ream.sheet");

    /** Two editions of the table are needed to say two; there is one so far. */
    private static final Set<String> OF_LATER = Set.of("plan.edition");

    private static String plan() {
        OrderDocument concert = Concert.read().value();
        return PapermathDocuments.writePlan(MakingPlan.of(concert.order(), concert.studio()), "p", "1");
    }

    private static String sample(String document) {
        return switch (document) {
            case "order" -> Concert.ORDER;
            case "recipe" -> Concert.RECIPE;
            case "studio" -> Concert.STUDIO;
            case "record" -> Batch.RECORD;
            case "prices" -> Shop.PRICES;
            case "quotation" -> Shop.QUOTATION;
            default -> plan();
        };
    }

    private static final String CODES = """
            format.other               | order  | papermath/order                  | papermath/studio
            version.unreadable         | recipe | "version": "1.0"                 | "version": "one"
            version.other              | recipe | "version": "1.0"                 | "version": "1.7"
            member.missing             | order  | "count": 70,                     |
            member.unknown             | order  | "count": 70                      | "count": 70, "number": 70
            member.one-of              | order  | "caliper": "0.4 mm",             |
            value.type                 | order  | "count": 70                      | "count": "70"
            text.blank                 | order  | "spring concert"                 | " "
            number.range               | order  | "count": 70                      | "count": 0
            number.not-whole           | order  | "count": 70                      | "count": 70.5
            list.length                | order  | ["55 mm", "90 mm"]               | ["55 mm"]
            choice.unknown             | order  | "deckle"                         | "torn"
            date.unreadable            | order  | 2027-04-09                       | 9 April
            quantity.no-unit           | order  | "130 g/m2"                       | 130
            quantity.unreadable-number | order  | "130 g/m2"                       | "some g/m2"
            unit.unknown               | order  | "130 g/m2"                       | "130 g"
            unit.unclear               | studio | 20 tonf_us                       | 20 ton
            grammage.ream-unclear      | order  | 130 g/m2                         | 88 lb
            source.blank               | studio | freeness of 3 May                | ' '
            member.duplicate           | order  | "count": 70                      | "count": 70, "count": 70
            text.character             | order  | spring concert                   | spring\\u0007concert
            text.long                  | order  | spring concert                   | LONG
            number.unreadable          | order  | "130 g/m2"                       | "1e400 g/m2"
            number.unreadable          | order  | "4 mm"                           | "1e-400 mm"
            number.unreadable          | order  | "4 mm"                           | "1e306 km"
            number.unreadable          | order  | "4 mm"                           | {"value": 1e306, "unit": "km"}
            time.unreadable            | studio | "from": "13:30"                  | "from": "half past one"
            schedule.hours             | studio | "from": "13:30"                  | "from": "18:30"
            schedule.days-off          | studio | "to": "2027-01-03"               | "to": "2026-01-03"
            date.none                  | order  | 2027-04-09                       | 2027-04-31
            date.range                 | order  | 2027-04-09                       | 1066-10-14
            order.too-many-pieces      | order  | "count": 5, "recipe": "reed"     | "count": 100000, "spare": "100 %", "kept": 5, "recipe": "reed"
            order.no-recipe            | order  | "count": 70, "recipe": "reed"    | "count": 70, "recipe": "rush"
            order.stuff-differs        | order  | "recipes": [                     | "recipes": [{"name": "oat", "furnish": [{"fibre": "abaca", "share": "1"}], "stuff": "white"}, {"name": "rust", "furnish": [{"fibre": "kozo", "share": "1"}], "stuff": "white"},
            order.no-piece             | order  | "envelopeFor": "programme"       | "envelopeFor": "program"
            order.envelope-in-envelope | order  | "envelopeFor": "programme"       | "envelopeFor": "envelope"
            piece.no-dryer             | order  | "dryer": "loft"                  | "dryer": "attic"
            piece.clash                | order  | "edge": "deckle"                 | "edge": "deckle", "trim": "2 mm"
            builder.twice              | order  | "name": "poster"                 | "name": "seat card"
            format.unknown             | order  | ISO A5                           | ISO A55
            format.unclear             | order  | ISO A5                           | A6
            step.band                  | order  | "waitsAtLeast": "2 d"            | "waitsAtLeast": "5 d"
            step.no-place              | order  | "waits": "3 d", "after": "pack"  | "waits": "3 d"
            step.no-time               | order  | "hands": "1.5 h", "waits": "3 d" | "hands": "0 h"
            step.place                 | order  | "before": "soak"                 | "before": "fibre"
            step.working-days          | order  | "waits": "4 d"                   | "waits": "96 h"
            mail.country               | order  | United States                    | Atlantis
            scope.name                 | order  | "name": "poster"                 | "name": "poster @ noon"
            quantity.range             | order  | 130 g/m2                         | -130 g/m2
            ream.count-missing         | order  | "130 g/m2"                       | {"weight": "88 lb", "sheet": ["25 in", "38 in"]}
            quantity.not-above-zero    | order  | 1.3 g                            | 0 g
            fibre.unknown              | recipe | cotton rag                       | coton rag
            fibre.unclear              | recipe | cotton rag                       | linter
            furnish.sum                | recipe | 60 %                             | 70 %
            furnish.twice              | recipe | {"id": "garden-reed", "name": "garden reed", "class": "grass", "kin": ["straw", "kraft"]} | "cotton-rag"
            vat.run-down               | studio | "runDownTo": "35 L"              | "runDownTo": "90 L"
            recipe.doses               | recipe | "dose": "0.                      | "dose": "40.
            recipe.beaten-apart        | recipe | "drainability": "31 SR"          | "beatenApart": [{"fibre": "abaca", "time": "2 h"}]
            recipe.state-twice         | recipe | "drainability": "31 SR"          | "drainability": "31 SR", "timedSheet": {"time": "9 s", "fibre": "50 g/m2", "consistency": "0.5 %"}
            assumptions.edition        | studio | 2026-11                          | 1987-02
            assumption.unknown         | studio | beating.rate                     | beating.rat
            assumption.unit            | studio | "0.12 1/h"                       | "0.12 kg"
            assumption.order           | studio | "0.12 1/h"                       | 0.2
            assumption.log-normal      | studio | "low": 0.1                       | "low": 0
            assumption.logit           | studio | 0.38                             | 0.38, "low": 0, "high": 0.4
            deckle.strips              | studio | 12 mm                            | 400 mm
            outline.not-simple         | studio | "opening": ["380 mm", "560 mm"]  | "outline": {"corners": [{"across": "0 mm", "along": "0 mm"}, {"across": "90 mm", "along": "90 mm"}, {"across": "90 mm", "along": "0 mm"}, {"across": "0 mm", "along": "90 mm"}]}
            screw.jams                 | studio | "lead": "10 mm"                  | "lead": "1 m"
            restraint.unknown          | record | "restraint": "blotters"          | "restraint": "pegs"
            reading.unfilled           | record | {"read": "50 g", "error"          | {"read": "", "error"
            record.count               | record | "rejected": 3                    | "rejected": 63
            money.currency             | prices | "currency": "EUR"                | "currency": "EURO"
            money.no-coin              | prices | "currency": "EUR"                | "currency": "XAU"
            money.number               | prices | "7.90 EUR"                       | "7,90 EUR"
            money.no-currency          | prices | "7.90 EUR"                       | "7.90"
            money.which-currency       | prices | "7.90 EUR"                       | "$ 7.90"
            money.finer-than-coin      | prices | "7.90 EUR"                       | "7.905 EUR"
            money.rate-text            | prices | 14 EUR per kg                    | 14 EUR a kilo
            money.other-currency       | quotation | 12.50 EUR                     | 12.50 GBP
            money.too-large            | quotation | 12.50 EUR                     | 999999999999999 EUR
            price.below-zero           | prices | "7.90 EUR"                       | "-7.90 EUR"
            price.other-currency       | prices | 14 EUR per kg                    | 14 GBP per kg
            price.profit-text          | prices | 15 % on cost                     | a fifth
            price.which-per-cent       | prices | 15 % on cost                     | 15 %
            price.other-share          | prices | 15 % on cost                     | 15 % of the price
            price.markup               | prices | 15 % on cost                     | 200000 % on cost
            price.margin               | prices | 15 % on cost                     | 100 % of the price
            price.uses                 | prices | 4.20 EUR per piece               | 4.20 EUR per 10 pieces pack
            postage.twice              | prices | "upTo": "50 g"                   | "upTo": "20 g"
            postage.no-table           | prices | "postage": {                     | "x-postage": {
            quotation.days             | quotation | "holdsUntil": "2027-02-04"    | "holdsUntil": "2027-01-04"
            quotation.seconds          | quotation | 10.60 EUR                     | 13.60 EUR
            quotation.per-cent         | quotation | 19 %                          | 0.12345678901 %
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = CODES)
    void theSchemaSeesWhatIsNotOnTheList(String code, String document, String from, String to) {
        String sample = sample(document);
        assertThat(sample).contains(from);
        String text = sample.replace(from, to == null ? "" : to.replace("LONG", "long ".repeat(60)));
        List<Fault> faults = Judged.faults(document, text);
        assertThat(faults).as("faults").extracting(Fault::code).contains(code);
        faults.forEach(FaultCodesTest::requireKnownArguments);
        boolean valid = Judged.schema(document).validate(text, InputFormat.JSON).isEmpty();
        assertThat(valid)
                .as("the schema accepts it")
                .isEqualTo(FaultCodes.seenByTheReaderOnly().contains(code));
    }

    private static Set<String> shown() {
        Set<String> shown = new TreeSet<>(OUTSIDE);
        shown.addAll(OF_OTHERS);
        shown.addAll(OF_LATER);
        CODES.lines().forEach(line -> shown.add(line.split("\\|")[0].strip()));
        return shown;
    }

    @Test
    void everyCodeOnTheListIsRaised() {
        Set<String> list = new TreeSet<>(FaultCodes.seenByTheReaderOnly());
        assertThat(FaultCodes.seenByTheReaderOnly()).doesNotHaveDuplicates();
        assertThat(shown()).containsAll(list);
        assertThat(list).containsAll(OUTSIDE).containsAll(OF_OTHERS).containsAll(OF_LATER);
        assertThat(Assumptions.editions())
                .as("plan.edition can be shown once there are two")
                .hasSize(1);
    }

    @Test
    void everyCodeOfTheReaderIsShown() throws IllegalAccessException {
        Set<String> codes = new TreeSet<>();
        for (java.lang.reflect.Field field : FaultCodes.class.getFields()) {
            if (field.getType() == String.class && Modifier.isStatic(field.getModifiers())) {
                codes.add((String) field.get(null));
            }
        }
        codes.remove(FaultCodes.RENAMED);
        assertThat(codes).hasSizeGreaterThan(30);
        assertThat(shown()).containsAll(codes);
    }

    @Test
    void everyCodeIsPublishedWithItsMeaning() {
        Set<String> codes = shown();
        codes.add(FaultCodes.RENAMED);
        assertThat(FaultCodes.meanings().keySet()).containsExactlyInAnyOrderElementsOf(codes);
        assertThat(FaultCodes.meanings()).isUnmodifiable();
        assertThat(FaultCodes.meanings().values())
                .allSatisfy(text -> assertThat(text).matches("[A-Z].*[.]"))
                .doesNotHaveDuplicates();
    }

    /** A fault the reader finds has values of its own beside those any fault may have; a refusal keeps its values. */
    private static void requireKnownArguments(Fault fault) {
        Code code = tables().filter(one -> one.name().equals(fault.code()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(fault.code() + " is in no table"));
        Set<String> names = new TreeSet<>(fault.arguments().keySet());
        names.removeAll(OF_ANY_FAULT);
        names.removeAll(code.arguments());
        assertThat(code.sometimes()).as(fault.code()).containsAll(names);
    }

    private static Stream<Code> tables() {
        return Stream.concat(Codes.all().stream(), FaultCodes.ofModule().stream());
    }

    /** A new refusal has to be looked at: can a document be refused so, and does the schema see it? */
    @Test
    void everyRefusalOfTheLibraryIsKnown() throws IOException {
        Set<String> raised = tables().filter(code ->
                        code.uses().contains(Code.Use.REFUSAL) || code.uses().contains(Code.Use.QUESTION))
                .map(Code::name)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(raised).hasSizeGreaterThan(190);
        Set<String> none = new TreeSet<>(
                Arrays.asList(text("/codes-of-no-document.txt").strip().split("\\s+")));
        Set<String> shown = shown();
        assertThat(none).doesNotContainAnyElementsOf(shown);
        assertThat(raised).containsAll(none);
        raised.removeAll(none);
        raised.removeAll(shown);
        assertThat(raised).as("refusals nobody looked at").isEmpty();
    }

    private static String text(String resource) throws IOException {
        try (java.io.InputStream in = FaultCodesTest.class.getResourceAsStream(resource)) {
            assertThat(in).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
