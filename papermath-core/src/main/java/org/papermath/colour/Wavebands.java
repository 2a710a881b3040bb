package org.papermath.colour;

/** In how many parts of the seen light a reflectance is told. */
public enum Wavebands {
    /** Every 10 nm from 400 to 700 nm. */
    THIRTY_ONE(31, 10),
    /** Every 20 nm from 400 to 700 nm. */
    SIXTEEN(16, 20),
    /**
     * The light of three primaries, all a photograph or a colorimeter can give. What two lights make differ in a sheet is not
     * seen, and mixtures are told less well.
     *
     * @source the primaries of ITU-R BT.2020, D65
     */
    THREE(3, 0);

    private final int count;
    private final int step;

    Wavebands(int count, int step) {
        this.count = count;
        this.step = step;
    }

    /**
     * Returns how many bands there are.
     *
     * @return the number of values of a reflectance
     */
    public int count() {
        return count;
    }

    int step() {
        return step;
    }
}
