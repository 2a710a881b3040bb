package org.papermath.equation;

/**
 * What mineral filler does to a sheet: it lies in the sheet by its own volume, holds no water that could shrink, and
 * slows the drainage as so much fibre would.
 *
 * @param share filler over the oven-dry sheet
 * @param volume what a mass of filler adds to the volume of the sheet, with the gaps it opens, m3/kg
 */
public record FillerLaw(double share, double volume) {
    /** The density of the sheet, from that of one without filler (kg/m3). */
    public double density(double unfilled) {
        return 1 / ((1 - share) / unfilled + share * volume);
    }

    /** The density of the sheet without its filler, from that of the sheet. */
    public double unfilled(double density) {
        return (1 - share) / (1 / density - share * volume);
    }

    /** The free shrinkage of the sheet, from that of one without filler. */
    public double shrinkage(double unfilled) {
        return unfilled * (1 - share);
    }
}
