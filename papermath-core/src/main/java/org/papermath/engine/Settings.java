package org.papermath.engine;

import org.jspecify.annotations.Nullable;

/** What to do, in plain numbers: chosen at the likely values, rounded to the tool, held fixed in forecasts. */
public final class Settings {
    private final PreparingStock.Setting[] stocks;
    private final CuttingAndFolding.Setting[] sizes;
    private final MakingEnvelopes.@Nullable Setting[] envelopes;
    private final FormingSheets.Setting[] sheets;
    private final FillingVat.Setting[] vats;
    private final Pressing.@Nullable Setting[] presses;
    private final Posts.@Nullable Setting[] posts;
    private final DryingSheets.Setting[] dryings;
    private final SizingSheets.@Nullable Setting[] sizings;

    Settings(int batches, int pieces) {
        stocks = new PreparingStock.Setting[batches];
        sizes = new CuttingAndFolding.Setting[pieces];
        envelopes = new MakingEnvelopes.Setting[pieces];
        sheets = new FormingSheets.Setting[pieces];
        vats = new FillingVat.Setting[pieces];
        presses = new Pressing.Setting[pieces];
        posts = new Posts.Setting[pieces];
        dryings = new DryingSheets.Setting[pieces];
        sizings = new SizingSheets.Setting[pieces];
    }

    void set(int batch, PreparingStock.Setting stock) {
        stocks[batch] = stock;
    }

    void set(
            int piece,
            CuttingAndFolding.Setting size,
            MakingEnvelopes.@Nullable Setting envelope,
            FormingSheets.Setting sheet,
            Pressing.@Nullable Setting press) {
        sizes[piece] = size;
        envelopes[piece] = envelope;
        sheets[piece] = sheet;
        presses[piece] = press;
    }

    void set(int piece, FillingVat.Setting vat) {
        vats[piece] = vat;
    }

    void set(
            int piece,
            Posts.@Nullable Setting post,
            DryingSheets.Setting drying,
            SizingSheets.@Nullable Setting sizing) {
        posts[piece] = post;
        dryings[piece] = drying;
        sizings[piece] = sizing;
    }

    /** Fibre, loads, doses and stock of a batch. */
    public PreparingStock.Setting stock(int batch) {
        return stocks[batch];
    }

    /** Size of a piece, flat and folded. */
    public CuttingAndFolding.Setting size(int piece) {
        return sizes[piece];
    }

    /** The envelope a piece is; null for none. */
    public MakingEnvelopes.@Nullable Setting envelope(int piece) {
        return envelopes[piece];
    }

    /** The sheets of a piece. */
    public FormingSheets.Setting sheet(int piece) {
        return sheets[piece];
    }

    /** How they are dipped or poured. */
    public FillingVat.Setting vat(int piece) {
        return vats[piece];
    }

    /** The press; null without one, or where the sheets lie on no felt. */
    public Pressing.@Nullable Setting press(int piece) {
        return presses[piece];
    }

    /** The posts; null without felts a sheet lies on. */
    public Posts.@Nullable Setting posts(int piece) {
        return posts[piece];
    }

    /** The dryer. */
    public DryingSheets.Setting drying(int piece) {
        return dryings[piece];
    }

    /** The size bath; null without one. */
    public SizingSheets.@Nullable Setting sizing(int piece) {
        return sizings[piece];
    }
}
