package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;

import org.junit.jupiter.api.Test;

/** Every code a document can be refused with is published with its meaning. */
class FaultMeaningsTest {
    @Test
    void everyCodeOfTheReaderHasAMeaning() throws IllegalAccessException {
        int codes = 0;
        for (Field field : FaultCodes.class.getFields()) {
            assertThat(FaultCodes.meanings()).containsKey((String) field.get(null));
            codes++;
        }
        assertThat(codes).isGreaterThan(30);
        assertThat(FaultCodes.meanings()).containsKeys(FaultCodes.seenByTheReaderOnly().toArray(String[]::new));
        assertThat(FaultCodes.meanings().values()).allSatisfy(text -> assertThat(text).matches("[A-Z].*[.]"))
                .doesNotHaveDuplicates();
    }

    @Test
    void theMeaningsCannotBeChanged() {
        assertThat(FaultCodes.meanings()).isUnmodifiable();
    }
}
