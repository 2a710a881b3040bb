package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import org.junit.jupiter.api.Test;

class NoticeTest {
    @Test
    void aNoticeHasALevelACodeATextAndNamedValues() {
        Notice note = Notice.note("vat.warm", "The vat is warm.", "temperature", "31 °C", "limit", "30 °C");
        assertThat(note.level()).isEqualTo(Notice.Level.NOTE);
        assertThat(note.code()).isEqualTo("vat.warm");
        assertThat(note.text()).isEqualTo("The vat is warm.");
        assertThat(note.arguments())
                .containsExactly(entry("temperature", "31 °C"), entry("limit", "30 °C"))
                .isUnmodifiable();
        assertThat(note).hasToString("note: The vat is warm.");
        assertThat(Notice.warning("vat.warm", "The vat is warm.")).hasToString("warning: The vat is warm.");
        assertThat(Notice.warning("vat.warm", "The vat is warm.").level()).isEqualTo(Notice.Level.WARNING);
    }

    @Test
    void aNameWithoutAValueIsAProgrammersError() {
        assertThatThrownBy(() -> Notice.note("vat.warm", "text", "temperature"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a name without a value: temperature");
    }

    @Test
    void equalityIsOfAllItsParts() {
        Notice note = Notice.note("vat.warm", "text", "a", 1);
        assertThat(note)
                .isEqualTo(Notice.note("vat.warm", "text", "a", 1))
                .hasSameHashCodeAs(Notice.note("vat.warm", "text", "a", 1));
        assertThat(note)
                .isNotEqualTo(Notice.note("vat.warm", "text", "a", 2))
                .isNotEqualTo(Notice.warning("vat.warm", "text", "a", 1))
                .isNotEqualTo(Notice.note("vat.hot", "text", "a", 1))
                .isNotEqualTo(Notice.note("vat.warm", "other", "a", 1));
    }
}
