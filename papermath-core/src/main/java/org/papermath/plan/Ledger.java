package org.papermath.plan;

import java.util.LinkedHashMap;
import java.util.Map;

import org.papermath.equation.Moisture;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/**
 * What goes into each batch and every account it goes out to, kept while the engine runs: fibre, water, each additive.
 */
final class Ledger {
    /** One substance of one batch: what came in and what went out, by the names of the accounts, in kg. */
    static final class Book {
        final Map<String, Double> in = new LinkedHashMap<>();
        final Map<String, Double> out = new LinkedHashMap<>();

        void in(String account, double mass) {
            in.merge(account, mass, Double::sum);
        }

        void out(String account, double mass) {
            out.merge(account, mass, Double::sum);
        }
    }

    static final String WEIGHED = "weighed";
    static final String WITH_STOCK = "in the stock";
    static final String TO_VAT = "to the vat";
    static final String HANDLING = "handling";
    static final String WHITE_WATER = "white water";
    static final String IN_VAT = "kept in the vat";
    static final String STOCK_LEFT = "stock put by";
    static final String TRIALS = "trial sheets";
    static final String GOOD = "good";
    static final String SPARE = "spare";
    static final String TRIM = "trim";
    static final String WET_REJECTS = "wet rejects";
    static final String PRESSED_OUT = "pressed out";
    static final String EVAPORATED = "evaporated";
    static final String IN_PAPER = "in the dry paper";

    final Book[] fibre;
    final Book[] water;
    final Book[][] additives;

    Ledger(Job job) {
        int n = job.batches.length;
        fibre = new Book[n];
        water = new Book[n];
        additives = new Book[n][];
        for (int b = 0; b < n; b++) {
            BatchJob batch = job.batches[b];
            fibre[b] = new Book();
            water[b] = new Book();
            additives[b] = new Book[batch.dose.length];
            for (int a = 0; a < batch.dose.length; a++) {
                additives[b][a] = new Book();
            }
        }
    }

    void open(int batch, double weighed, double stock, double[] inStock, double handled) {
        fibre[batch].in(WEIGHED, weighed);
        fibre[batch].out(HANDLING, weighed * (1 - handled));
        double solids = weighed;
        for (int a = 0; a < inStock.length; a++) {
            additives[batch][a].in(WEIGHED, inStock[a] * stock);
            additives[batch][a].out(HANDLING, inStock[a] * stock * (1 - handled));
            solids += inStock[a] * stock;
        }
        water[batch].in(WITH_STOCK, stock - solids);
        water[batch].out(HANDLING, (stock - solids) * (1 - handled));
    }

    void charge(int batch, double waterIn, double bailed, double fibreOut, double solidsOut) {
        water[batch].in(TO_VAT, waterIn);
        water[batch].out(WHITE_WATER, bailed - solidsOut);
        fibre[batch].out(WHITE_WATER, fibreOut);
    }

    void bailedAdditive(int batch, int additive, double mass) {
        additives[batch][additive].out(WHITE_WATER, mass);
    }

    void piece(Job job, PieceJob piece, PieceSettings set, double[] sheets, double[][] carried, double usedShare,
            double couched, double pressed, double end, double[] v, Yields yields) {
        double last = piece.measuredMoisture == Job.NONE ? end : Moisture.ratioOfWetBasis(v[piece.measuredMoisture]);
        double solids = share(job, piece, set, sheets, usedShare, v, yields, fibre[piece.batch]);
        for (int a = 0; a < carried.length; a++) {
            solids += share(job, piece, set, carried[a], usedShare, v, yields, additives[piece.batch][a]);
        }
        double trialSolids = trials(piece, sheets);
        for (double[] additive : carried) {
            trialSolids += trials(piece, additive);
        }
        // Sheets that fail before they are dry leave with the water they hold then; all others are dried.
        double run = solids - trialSolids;
        double formedBad = run * v[piece.rejectForming];
        double pressedBad = job.hasPress ? (run - formedBad) * v[piece.rejectPressing] : 0;
        double dried = piece.dryerKind == Job.NO_DRYER ? 0 : solids - formedBad - pressedBad;
        double stillWet = solids - formedBad - dried;
        Book book = water[piece.batch];
        book.out(WET_REJECTS, formedBad * couched + (piece.dryerKind == Job.NO_DRYER ? 0 : pressedBad * pressed));
        book.out(PRESSED_OUT, (solids - formedBad) * (couched - pressed));
        double kept = Math.min(pressed, last);
        book.out(EVAPORATED, dried * (pressed - kept));
        book.out(IN_PAPER, dried * kept + (piece.dryerKind == Job.NO_DRYER ? stillWet * pressed : 0));
    }

    /** Shares the substance in the sheets of a piece among its accounts and returns how much there is of it. */
    private static double share(Job job, PieceJob piece, PieceSettings set, double[] sheets, double usedShare,
            double[] v,
            Yields yields, Book book) {
        double trial = trials(piece, sheets);
        double run = 0;
        for (double sheet : sheets) {
            run += sheet;
        }
        double all = run;
        run -= trial;
        book.out(TRIALS, trial);
        run = reject(book, "rejected in forming", run, v[piece.rejectForming]);
        if (job.hasPress) {
            run = reject(book, "rejected in pressing", run, v[piece.rejectPressing]);
        }
        if (piece.dryerKind != Job.NO_DRYER) {
            run = reject(book, "rejected in drying", run, v[piece.rejectDrying]);
        }
        if (!Double.isNaN(job.batches[piece.batch].sizeBath)) {
            run = reject(book, "rejected in sizing", run, v[piece.rejectSizing]);
        }
        double trim = run * Math.max(0, 1 - usedShare);
        book.out(TRIM, trim);
        run -= trim;
        if (!piece.deckleEdge) {
            run = reject(book, "rejected in cutting", run, v[piece.rejectCutting]);
        }
        if (piece.rejectFolding != Job.NONE) {
            run = reject(book, "rejected in folding", run, v[piece.rejectFolding]);
        }
        double good = (sheets.length - piece.trials) * (double) set.up * yields.ofSheets(piece, v)
                * yields.ofPieces(piece, v);
        double wanted = good > piece.ordered ? run * piece.ordered / good : run;
        book.out(GOOD, wanted);
        book.out(SPARE, run - wanted);
        return all;
    }

    private static double reject(Book book, String account, double mass, double share) {
        book.out(account, mass * share);
        return mass - mass * share;
    }

    private static double trials(PieceJob piece, double[] sheets) {
        double mass = 0;
        for (int i = 0; i < Math.min(piece.trials, sheets.length); i++) {
            mass += sheets[i];
        }
        return mass;
    }

    void close(int batch, double vatFibre, double vatStock, double[] vatAdditive, double stockLeft, double consistency,
            double[] inStock) {
        fibre[batch].out(IN_VAT, vatFibre);
        fibre[batch].out(STOCK_LEFT, stockLeft * consistency);
        double solids = vatFibre;
        double leftSolids = stockLeft * consistency;
        for (int a = 0; a < inStock.length; a++) {
            additives[batch][a].out(IN_VAT, vatAdditive[a]);
            additives[batch][a].out(STOCK_LEFT, stockLeft * inStock[a]);
            solids += vatAdditive[a];
            leftSolids += stockLeft * inStock[a];
        }
        water[batch].out(IN_VAT, vatStock - solids);
        water[batch].out(STOCK_LEFT, stockLeft - leftSolids);
    }
}
