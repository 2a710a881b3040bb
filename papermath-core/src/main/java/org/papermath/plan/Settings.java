package org.papermath.plan;

/**
 * What to do, in plain numbers of coherent SI: chosen at the likely values, rounded to the tool, held fixed in
 * forecasts.
 */
final class Settings {
    final BatchSettings[] batches;
    final PieceSettings[] pieces;

    Settings(int batches, int pieces) {
        this.batches = new BatchSettings[batches];
        this.pieces = new PieceSettings[pieces];
        for (int i = 0; i < batches; i++) {
            this.batches[i] = new BatchSettings();
        }
        for (int i = 0; i < pieces; i++) {
            this.pieces[i] = new PieceSettings();
        }
    }

    /** Settings of a batch. */
    static final class BatchSettings {
        /** Oven-dry fibre wanted at the scale, before rounding. */
        double ovenDry;
        /** Oven-dry fibre of each kind from what is on hand. */
        double[] fromHand = {};
        /** Mass to weigh of each kind, as bought. */
        double[] asBought = {};
        double soakWater;
        int loads;
        double loadOvenDry;
        /** Water to each beater load, what the fibre brings with it taken off. */
        double loadWater;
        /** Product to weigh of each additive, for one load. */
        double[] product = {};
        /** Stock of all loads, before handling losses. */
        double stock;
        double stockDensity;
    }

    /** Settings of a piece. */
    static final class PieceSettings {
        double width;
        double height;
        double foldedWidth;
        double foldedHeight;
        int mould = Job.NONE;
        /** Whether the deckle of that mould already has the opening a rim on every side needs. */
        boolean ownDeckle;
        int up;
        int rowAcross;
        int rowAlong;
        boolean turned;
        double openingWidth;
        double openingHeight;
        int sheets;
        /** Oven-dry solids a sheet must have. */
        double solids;
        double fibre;
        /** Whether the sheets are dipped from the vat; poured otherwise. */
        boolean dipped;
        /** Whether the mould is wider than the vat. */
        boolean tooWide;
        /** The least vat one lift keeps within its band, where the vat of the studio is smaller, m³; else zero. */
        double leastVatVolume;
        double lift;
        /** The lift before it is rounded to the scale, kg. */
        double wantedLift;
        /** The most stock measured at a time before it is rounded to the jug, kg. */
        double wantedStock;
        /** How far the steps of the tools move the weight of the sheets, as a fraction. */
        double stepShift;
        /** Whether that comes of the step of the jug; of the scale otherwise. */
        boolean jugStep;
        /** What a step of that tool should be, in its unit: kg or m³. */
        double finerStep;
        /** The consistency, of the vat for the scale, of the stock for the jug, at which its own steps come out even. */
        double evenConsistency;
        /** Stock and water to the vat before the first sheet of this piece. */
        double startStock;
        double startWater;
        /** White water bailed before the first sheet of this piece. */
        double startBail;
        int every;
        double[] rechargeStock = {};
        double[] rechargeWater = {};
        double[] rechargeBail = {};
        /** Whether there are felts, and a wet sheet lies on one. */
        boolean felted;
        /** Whether the platen covers a wet sheet. */
        boolean covered = true;
        int sheetsInPost;
        int posts;
        double force;
        double pressure;
        double pressTime;
        boolean pressLimited;
        int dryerLoads;
        int blotterChanges;
        double envelopeInsideWidth;
        double envelopeInsideHeight;
        double envelopeOutsideWidth;
        double envelopeOutsideHeight;
        double envelopeSeam;
        double blankAreaShare = 1;
        double filling;
        double sizeTaken;
        /** Size bath to make, by volume, and the dry size in it, by mass. */
        double sizeBath;
        double drySize;
    }
}
