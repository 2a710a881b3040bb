package org.papermath.mould;

import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

/**
 * The opening in which one sheet forms.
 *
 * @param width the side across
 * @param height the side along
 */
public record Opening(Amount<Length> width, Amount<Length> height) {
    /**
     * Makes an opening.
     *
     * @param width the side across, above zero
     * @param height the side along, above zero
     * @throws Refused if a side is not a length above zero
     */
    public Opening {
        width = Kinds.LENGTH.checkAboveZero(width, "width of the opening");
        height = Kinds.LENGTH.checkAboveZero(height, "height of the opening");
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
