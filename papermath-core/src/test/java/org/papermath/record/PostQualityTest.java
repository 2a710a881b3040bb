package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class PostQualityTest {
    private static List<Amount<Mass>> post(double... weights) {
        return Arrays.stream(weights).mapToObj(Amounts::grams).toList();
    }

    /** Heavier from bottom to top in each of three posts; figures by least squares of NumPy 2.4. */
    @Test
    void trendWithinThePost() {
        PostQuality<Mass> posts = PostQuality.of(
                Kinds.MASS,
                List.of(post(10.0, 10.2, 10.3, 10.5), post(10.1, 10.2, 10.5, 10.6), post(10.0, 10.3, 10.4, 10.5)));
        assertThat(posts.place().share()).isCloseTo(0.160416667 / 10.3, within(1e-9));
        assertThat(posts.run().share()).isCloseTo(0.00625 / 10.3, within(1e-9));
        assertThat(posts.residual().in("g")).isCloseTo(0.06526300069150402, within(1e-12));
        assertThat(posts.place().t()).isCloseTo(9.00668648, within(1e-7));
        assertThat(posts.run().t()).isCloseTo(1.08347268, within(1e-7));
        assertThat(posts.place().isReal()).isTrue();
        assertThat(posts.run().isReal()).isFalse();
        assertThat(posts.notices()).extracting(Notice::code).containsExactly("series.post-trend");
        assertThat(posts)
                .hasToString(
                        "the post, not the run of the vat: 1.557 % heavier from sheet to sheet from the bottom of a post to its"
                                + " top (t = 9.007), no more than chance along the run (t = 1.083); mean 10.3 g, sd about it all"
                                + " 0.06526 g; 12 sheets in 3 posts");
    }

    /** Lighter along the run in posts of unequal number; figures by least squares of NumPy 2.4. */
    @Test
    void trendAlongTheRun() {
        PostQuality<Mass> posts = PostQuality.of(
                Kinds.MASS, List.of(post(10.0, 10.2, 9.9, 10.05, 9.8), post(9.7, 9.75, 9.6), post(9.6, 9.3, 9.5, 9.2)));
        assertThat(posts.run().t()).isCloseTo(-7.76271044, within(1e-7));
        assertThat(posts.run().chance()).isCloseTo(2.81316324e-05, within(1e-11));
        assertThat(posts.place().t()).isCloseTo(0.31937661, within(1e-7));
        assertThat(posts.place().chance()).isCloseTo(0.756729553, within(1e-8));
        assertThat(posts.notices()).isEmpty();
        assertThat(posts.toString())
                .startsWith(
                        "the vat, not the post: 0.8 % lighter from sheet to sheet along the run (t = -7.763), no more"
                                + " than chance from the bottom of a post to its top (t = 0.3194); mean 9.717 g");
    }

    @Test
    void neitherBothAndAllAlike() {
        assertThat(PostQuality.of(
                                Kinds.MASS,
                                List.of(post(10.2, 10.0, 10.3), post(10.1, 10.3, 10.0), post(10.3, 10.1, 10.1)))
                        .toString())
                .startsWith("the hand, no trend: ");
        assertThat(PostQuality.of(
                                Kinds.MASS,
                                List.of(
                                        post(10.0, 10.31, 10.6),
                                        post(9.41, 9.7, 10.0),
                                        post(8.8, 9.11, 9.41),
                                        post(8.21, 8.5, 8.79)))
                        .toString())
                .startsWith("the vat and the post: ");
        PostQuality<Mass> alike = PostQuality.of(Kinds.MASS, List.of(post(10, 10), post(10, 10)));
        assertThat(alike.run().chance()).isEqualTo(1);
        assertThat(alike.place().t()).isZero();
        assertThat(alike).hasToString("all alike: mean 10 g, sd about it all 0 g; 4 sheets in 2 posts");
    }

    /** The simple series would take a trend that comes back in every post for the scatter of the hand. */
    @Test
    void aTrendWithinThePostIsNoDrift() {
        List<List<Amount<Length>>> posts = new ArrayList<>();
        List<Amount<Length>> series = new ArrayList<>();
        Random chance = new Random(3);
        for (int p = 0; p < 5; p++) {
            List<Amount<Length>> post = new ArrayList<>();
            for (int j = 0; j < 8; j++) {
                post.add(mm(0.2 + 0.004 * j + 0.002 * chance.nextGaussian()));
            }
            posts.add(post);
            series.addAll(post);
        }
        assertThat(SheetQuality.of("thickness", Kinds.LENGTH, series).cause()).isEqualTo(SheetQuality.Cause.HAND);
        assertThat(PostQuality.of("thickness", Kinds.LENGTH, posts).toString())
                .startsWith("the post, not the run of the vat: ")
                .contains("thicker");
    }

    @Test
    void oneSheetOffIsNamedByItsPost() {
        PostQuality<Mass> posts = PostQuality.of(
                Kinds.MASS,
                List.of(post(10.0, 10.2, 10.3, 10.5), post(10.1, 10.2, 12.5, 10.6), post(10.0, 10.3, 10.4, 10.5)));
        assertThat(posts.notices()).first().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("series.outlier");
            assertThat(notice.text())
                    .isEqualTo(
                            "Sheet 3 of post 2 at 12.5 g lies off the trends of the others by more than chance; look at"
                                    + " it before you believe these figures.");
            assertThat(notice.arguments()).containsEntry("post", 2).containsEntry("sheet", 3);
        });
    }

    @Test
    void refusals() {
        List<List<Amount<Mass>>> one = List.of(post(10, 10.1, 10.2, 10.3, 10.2));
        assertThatThrownBy(() -> PostQuality.of(Kinds.MASS, one))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "posts: the places in them do not tell from the run; at least two posts are needed, one of them"
                                + " of two sheets or more.");
        List<List<Amount<Mass>>> singles = List.of(post(10), post(10.1), post(10.2), post(10.3));
        assertThatThrownBy(() -> PostQuality.of(Kinds.MASS, singles)).isInstanceOf(Refused.class);
        List<List<Amount<Mass>>> few = List.of(post(10, 11), post(10.1));
        assertThatThrownBy(() -> PostQuality.of(Kinds.MASS, few))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("posts: 3 sheets given in all; at least 4 are needed");
        assertThat(PostQuality.of(Kinds.MASS, List.of(post(10, 11, 10.5), List.of(), List.of(grams(10.1))))
                        .mean()
                        .in("g"))
                .isCloseTo(10.4, within(1e-12));
    }
}
