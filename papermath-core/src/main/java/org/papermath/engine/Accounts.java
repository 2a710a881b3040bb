package org.papermath.engine;

/**
 * What goes into each batch and every account it goes out to, kept while a forecast is worked out at the likely values:
 * fibre, water, each additive.
 */
public final class Accounts {
    private final Book[] fibre;
    private final Book[] water;
    private final Book[][] additives;

    Accounts(PreparingStock[] batches) {
        int n = batches.length;
        fibre = new Book[n];
        water = new Book[n];
        additives = new Book[n][];
        for (int b = 0; b < n; b++) {
            fibre[b] = new Book();
            water[b] = new Book();
            additives[b] = new Book[batches[b].additives()];
            for (int a = 0; a < additives[b].length; a++) {
                additives[b][a] = new Book();
            }
        }
    }

    /** The accounts of the fibre of a batch. */
    public Book fibre(int batch) {
        return fibre[batch];
    }

    /** The accounts of its water. */
    public Book water(int batch) {
        return water[batch];
    }

    /** The accounts of one of its additives. */
    public Book additive(int batch, int additive) {
        return additives[batch][additive];
    }

    void open(int batch, PreparingStock.Made made) {
        double stock = made.stock();
        double weighed = made.weighed() + made.onHand();
        double handled = made.handled();
        double[] inStock = made.inStock();
        fibre[batch].in(Account.WEIGHED, made.raw());
        if (made.onHand() > 0) {
            fibre[batch].in(Account.STUFF_ON_HAND, made.onHand());
        }
        if (made.raw() > made.weighed()) {
            fibre[batch].out(Account.COOKED_OUT, made.raw() - made.weighed());
        }
        fibre[batch].out(Account.HANDLING, weighed * (1 - handled));
        double solids = weighed;
        for (int a = 0; a < inStock.length; a++) {
            double brought = made.dosed()[a];
            additives[batch][a].in(Account.WEIGHED, inStock[a] * stock - brought);
            if (brought > 0) {
                additives[batch][a].in(Account.STUFF_ON_HAND, brought);
            }
            additives[batch][a].out(Account.HANDLING, inStock[a] * stock * (1 - handled));
            solids += inStock[a] * stock;
        }
        water[batch].in(Account.WITH_STOCK, stock - solids);
        water[batch].out(Account.HANDLING, (stock - solids) * (1 - handled));
    }

    void charge(int batch, double waterIn, double bailed, double fibreOut, double solidsOut) {
        water[batch].in(Account.TO_VAT, waterIn);
        water[batch].out(Account.WHITE_WATER, bailed - solidsOut);
        fibre[batch].out(Account.WHITE_WATER, fibreOut);
    }

    void bailedAdditive(int batch, int additive, double mass) {
        additives[batch][additive].out(Account.WHITE_WATER, mass);
    }

    /**
     * Books the sheets of a piece.
     *
     * @param isPressed whether they go to the press
     * @param usedShare share of a dry sheet that its pieces take up
     * @param couched moisture ratio as the sheets leave the vat
     * @param pressed moisture ratio as they leave the press
     * @param last moisture ratio they are dried to
     */
    void piece(
            int batch,
            PieceWork piece,
            boolean isPressed,
            int perSheet,
            FillingVat.Sheets run,
            double usedShare,
            double couched,
            double pressed,
            double last,
            Values v) {
        Rejects rejects = piece.rejects();
        double solids = share(piece, isPressed, perSheet, run.sheets(), usedShare, v, fibre[batch]);
        for (int a = 0; a < run.carried().length; a++) {
            solids += share(piece, isPressed, perSheet, run.carried()[a], usedShare, v, additives[batch][a]);
        }
        double trialSolids = trials(piece, run.sheets());
        for (double[] additive : run.carried()) {
            trialSolids += trials(piece, additive);
        }
        // Sheets that fail before they are dry leave with the water they hold then; all others are dried.
        double good = solids - trialSolids;
        double formedBad = good * rejects.forming(v);
        double pressedBad = isPressed ? (good - formedBad) * rejects.pressing(v) : 0;
        boolean dries = rejects.dries();
        double dried = dries ? solids - formedBad - pressedBad : 0;
        double stillWet = solids - formedBad - dried;
        Book book = water[batch];
        book.out(Account.WET_REJECTS, formedBad * couched + (dries ? pressedBad * pressed : 0));
        book.out(Account.PRESSED_OUT, (solids - formedBad) * (couched - pressed));
        double kept = Math.min(pressed, last);
        book.out(Account.EVAPORATED, dried * (pressed - kept));
        book.out(Account.IN_PAPER, dried * kept + (dries ? 0 : stillWet * pressed));
    }

    /** Shares the substance in the sheets of a piece among its accounts and returns how much there is of it. */
    private static double share(
            PieceWork piece, boolean isPressed, int perSheet, double[] sheets, double usedShare, Values v, Book book) {
        Rejects rejects = piece.rejects();
        double trial = trials(piece, sheets);
        double run = 0;
        for (double sheet : sheets) {
            run += sheet;
        }
        double all = run;
        run -= trial;
        book.out(Account.TRIALS, trial);
        run = reject(book, Account.REJECTED_FORMING, run, rejects.forming(v));
        if (isPressed) {
            run = reject(book, Account.REJECTED_PRESSING, run, rejects.pressing(v));
        }
        if (rejects.dries()) {
            run = reject(book, Account.REJECTED_DRYING, run, rejects.drying(v));
        }
        if (rejects.sizes()) {
            run = reject(book, Account.REJECTED_SIZING, run, rejects.sizing(v));
        }
        double trim = run * Math.max(0, 1 - usedShare);
        book.out(Account.TRIM, trim);
        run -= trim;
        if (rejects.cuts()) {
            run = reject(book, Account.REJECTED_CUTTING, run, rejects.cutting(v));
        }
        if (rejects.folds()) {
            run = reject(book, Account.REJECTED_FOLDING, run, rejects.folding(v));
        }
        double good = (sheets.length - piece.trials())
                * (double) perSheet
                * rejects.ofSheets(isPressed, v)
                * rejects.ofPieces(v);
        double wanted = good > piece.ordered() ? run * piece.ordered() / good : run;
        book.out(Account.GOOD, wanted);
        book.out(Account.SPARE, run - wanted);
        return all;
    }

    private static double reject(Book book, Account account, double mass, double share) {
        book.out(account, mass * share);
        return mass - mass * share;
    }

    private static double trials(PieceWork piece, double[] sheets) {
        double mass = 0;
        for (int i = 0; i < Math.min(piece.trials(), sheets.length); i++) {
            mass += sheets[i];
        }
        return mass;
    }

    void close(int batch, RunningVat tank, double stockLeft, PreparingStock.Made made) {
        double consistency = made.consistency();
        double[] inStock = made.inStock();
        fibre[batch].out(Account.IN_VAT, tank.fibre());
        fibre[batch].out(Account.STOCK_LEFT, stockLeft * consistency);
        double solids = tank.fibre();
        double leftSolids = stockLeft * consistency;
        for (int a = 0; a < inStock.length; a++) {
            additives[batch][a].out(Account.IN_VAT, tank.additive()[a]);
            additives[batch][a].out(Account.STOCK_LEFT, stockLeft * inStock[a]);
            solids += tank.additive()[a];
            leftSolids += stockLeft * inStock[a];
        }
        water[batch].out(Account.IN_VAT, tank.mass() - solids);
        water[batch].out(Account.STOCK_LEFT, stockLeft - leftSolids);
    }
}
