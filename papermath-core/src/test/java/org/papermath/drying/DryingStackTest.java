package org.papermath.drying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class DryingStackTest {
    @Test
    void layersBlottersAndBoards() {
        DryingStack stack = DryingStack.of(24).inLayer(3).blottersEachSide(2);
        assertThat(stack.layers()).isEqualTo(8);
        assertThat(stack.blotters()).isEqualTo(32);
        assertThat(stack.boards()).isEqualTo(9);
        assertThat(stack).hasToString("8 layers, 32 blotters, 9 boards");
        assertThat(DryingStack.of(25).inLayer(3).layers()).isEqualTo(9);
        // Twelve sheets one to a layer with one or two blotters each side: 24 to 48 blotters and 13 boards.
        assertThat(DryingStack.of(12).blottersEachSide(1)).hasToString("12 layers, 24 blotters, 13 boards");
        assertThat(DryingStack.of(12).blottersEachSide(2)).hasToString("12 layers, 48 blotters, 13 boards");
    }

    @Test
    void loads() {
        DryingStack stack = DryingStack.of(24).inLayer(3);
        assertThat(stack.loads(8)).isEqualTo(1);
        assertThat(stack.loads(7)).isEqualTo(2);
        assertThat(stack.loads(1)).isEqualTo(8);
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> DryingStack.of(0))
                .isInstanceOf(Refused.class)
                .hasMessage("sheets to dry: 0 given; must be 1 or more.");
        assertThatThrownBy(() -> DryingStack.of(5).inLayer(0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> DryingStack.of(5).blottersEachSide(-1))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("from 0 to 50");
        assertThatThrownBy(() -> DryingStack.of(5).loads(0)).isInstanceOf(Refused.class);
    }
}
