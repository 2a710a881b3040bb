package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

/** Several editions side by side, each with its own table. */
class EditionsTest {
    private static final String HEAD =
            "# a table\nid,scope,meaning,likely,low,high,shape,least,most,unit,role,basis,source\n";
    private static final Map<String, String> TEXTS = Map.of(
            "1801-02",
                    HEAD
                            + "beating.rate,,\"rate, of beating\",0.4,0.2,0.8,log-normal,0,,1/h,physical,recalled,a book\n",
            "1799-01", HEAD + "beating.rate,,rate of beating,0.3,0.2,0.6,log-normal,0,,1/h,physical,recalled,a book\n");

    private final List<String> opened = new ArrayList<>();
    private final Editions editions = new Editions(List.of("1801-02", "1799-01"), this::open);

    private InputStream open(String edition) {
        opened.add(edition);
        return new ByteArrayInputStream(TEXTS.get(edition).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void eachEditionHasItsOwnTable() {
        Assumptions old = editions.get("1799-01");
        assertThat(old.edition()).isEqualTo("1799-01");
        assertThat(old.get("beating.rate", Scope.GENERAL).likely()).isEqualTo(0.3);
        assertThat(editions.newest().edition()).isEqualTo("1801-02");
        assertThat(editions.newest().get("beating.rate", Scope.GENERAL).likely())
                .isEqualTo(0.4);
        assertThat(editions.newest().get("beating.rate", Scope.GENERAL).meaning())
                .isEqualTo("rate, of beating");
        assertThat(editions.names()).containsExactly("1801-02", "1799-01");
    }

    @Test
    void aTableIsReadOnceAndOnlyWhenAskedFor() {
        assertThat(opened).isEmpty();
        assertThat(editions.get("1799-01")).isSameAs(editions.get("1799-01"));
        assertThat(opened).containsExactly("1799-01");
    }

    @Test
    void anEditionThatIsNotAtHandIsRefused() {
        Refused refused = catchThrowableOfType(Refused.class, () -> editions.get("2026-11"));
        assertThat(refused.code()).isEqualTo("assumptions.edition");
        assertThat(refused).hasMessageContaining("which holds: 1801-02, 1799-01.");
        assertThat(opened).isEmpty();
    }

    @Test
    void whatIsOfYourOwnIsToldAgainstTheTableTheStoreStartedFrom() {
        Assumptions old = editions.get("1799-01");
        Assumptions mine = old.given("beating.rate", Scope.of("abaca"), 0.5);
        assertThat(mine.edition()).isEqualTo("1799-01");
        assertThat(mine.own()).extracting(Assumption::key).containsExactly("beating.rate[abaca]");
        assertThat(old.beyond(editions.newest())).containsExactlyElementsOf(old.all());
        assertThat(mine.beyond(old)).isEqualTo(mine.own());
    }

    @Test
    void aTableThatIsDamagedIsNotTaken() {
        assertThatThrownBy(() -> AssumptionsTable.read(
                        "1799-01",
                        new ByteArrayInputStream(
                                (TEXTS.get("1799-01") + TEXTS.get("1799-01").substring(HEAD.length()))
                                        .getBytes(StandardCharsets.UTF_8))))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("beating.rate stands twice");
        assertThatThrownBy(() -> AssumptionsTable.read(
                        "1799-01",
                        new ByteArrayInputStream((HEAD + "beating.rate,\n").getBytes(StandardCharsets.UTF_8))))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("a row of 2 cells");
        Editions none = new Editions(List.of("1700-01"), edition -> {
            throw new IllegalStateException("missing");
        });
        assertThatThrownBy(none::newest).isInstanceOf(IllegalStateException.class);
    }
}
