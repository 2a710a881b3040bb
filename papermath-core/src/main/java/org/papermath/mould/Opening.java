package org.papermath.mould;

import java.util.Objects;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.shape.Outline;

/**
 * The opening in which one sheet forms.
 *
 * @param width the side across
 * @param height the side along
 */
public record Opening(Amount<Length> width, Amount<Length> height) {
    /**
     * Checks that nothing is missing.
     *
     * @param width the side across
     * @param height the side along
     */
    public Opening {
        Objects.requireNonNull(width, "width");
        Objects.requireNonNull(height, "height");
    }

    /**
     * Returns the area.
     *
     * @return the area in which pulp settles
     */
    public Amount<Area> area() {
        return Kinds.AREA.ofSi(width.si() * height.si(), "cm2");
    }

    /**
     * Returns the rectangle.
     *
     * @return the outline
     */
    public Outline outline() {
        return Outline.rectangle(width, height);
    }

    @Override
    public String toString() {
        return width + " × " + height;
    }
}
