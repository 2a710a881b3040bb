package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;

/** The table of codes, and the door to it. */
class CodesTest {
    private static final String HEAD = "code,uses,arguments,meaning\n";

    private static InputStream text(String rows) {
        return new ByteArrayInputStream((HEAD + rows).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void everyMeaningIsOneSentenceOfItsOwn() {
        List<Code> all = Codes.all();
        assertThat(all).hasSizeGreaterThan(300).isUnmodifiable();
        assertThat(all).extracting(Code::name).isSorted().doesNotHaveDuplicates();
        assertThat(all).extracting(Code::meaning).doesNotHaveDuplicates();
        assertThat(all)
                .allSatisfy(code ->
                        assertThat(code.meaning()).matches("[A-Z][^.!?]*[.]").hasSizeLessThan(130));
    }

    @Test
    void namesOfValuesAreWordsOfPrograms() {
        for (Code code : Codes.all()) {
            assertThat(code.arguments()).as(code.name()).allMatch(name -> name.matches("[a-z][a-zA-Z]*"));
            assertThat(code.sometimes()).as(code.name()).allMatch(name -> name.matches("[a-z][a-zA-Z]*"));
        }
    }

    @Test
    void aRefusalIsFoundWithTheValuesItHas() {
        assertThatThrownBy(() -> Kinds.CONSISTENCY.of(140, "%")).satisfies(thrown -> {
            PapermathException refused = (PapermathException) thrown;
            Code code = Codes.find(refused.code()).orElseThrow();
            assertThat(code.uses()).containsExactly(Code.Use.REFUSAL);
            assertThat(refused.arguments().keySet()).containsExactlyElementsOf(code.arguments());
        });
        assertThatThrownBy(() -> Kinds.FORCE.read("3 ton")).satisfies(thrown -> {
            Code code = Codes.find(((PapermathException) thrown).code()).orElseThrow();
            assertThat(code.uses()).containsExactly(Code.Use.QUESTION);
        });
    }

    @Test
    void oneMatterMayStopOneThingAndBeToldOfAnother() {
        Code small = Codes.find("vat.too-small").orElseThrow();
        assertThat(small.uses()).containsExactly(Code.Use.REFUSAL, Code.Use.NOTICE);
        assertThat(small.arguments()).containsExactly("tolerance", "lifted", "least");
        assertThat(small.sometimes()).containsExactly("piece");
        assertThat(small.room()).isEqualTo("vat");
        assertThat(small).hasToString("vat.too-small: " + small.meaning());
        assertThat(Codes.find("vat.to-small")).isEmpty();
    }

    @Test
    void aRowIsReadAsItStands() throws IOException {
        Code code = Codes.read(text("a.b,refusal notice,one two?,\"This, and that.\"\n"))
                .get("a.b");
        assertThat(code)
                .isEqualTo(new Code(
                        "a.b",
                        EnumSet.of(Code.Use.NOTICE, Code.Use.REFUSAL),
                        List.of("one"),
                        List.of("two"),
                        "This, and that."));
    }

    @Test
    void aTableThatCannotBeMeantIsNotRead() {
        assertThatIllegalStateException()
                .isThrownBy(() -> Codes.read(text("a.b,notice,,One.\na.b,notice,,Two.\n")))
                .withMessageContaining("a.b stands twice");
        assertThatIllegalStateException()
                .isThrownBy(() -> Codes.read(text("a.b,notice,One.\n")))
                .withMessageContaining("a row of 3 cells");
        assertThatIllegalArgumentException().isThrownBy(() -> Codes.read(text("a.b,remark,,One.\n")));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Codes.read(text("a.b,notice,one one?,One.\n")))
                .withMessageContaining("an argument stands twice");
    }

    @Test
    void aCodeHasADottedNameAUseAndAMeaning() {
        Set<Code.Use> notice = EnumSet.of(Code.Use.NOTICE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Code("post", notice, List.of(), List.of(), "It is heavy."))
                .withMessageContaining("two words with a dot");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Code("post.heavy", Set.of(), List.of(), List.of(), "It is heavy."));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Code("post.heavy", notice, List.of(), List.of(), " "));
        assertThat(Code.Use.STAGE.words()).isEqualTo("stage not done");
    }
}
