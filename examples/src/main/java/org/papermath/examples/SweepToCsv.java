package org.papermath.examples;

import static org.papermath.quantity.Amounts.hours;

import java.io.IOException;
import java.io.PrintStream;
import org.papermath.whatif.Input;
import org.papermath.whatif.Outcome;
import org.papermath.whatif.WhatIf;
import org.papermath.whatif.WhatIfTable;

/** What the hours of beating do to the paper, as a table to read and as comma-separated values for a spreadsheet. */
public final class SweepToCsv {
    private SweepToCsv() {}

    /**
     * Prints the table, or saves the values.
     *
     * @param args the path of a file for the values; without it they are printed below the table
     * @throws IOException if they cannot be saved
     */
    public static void main(String[] args) throws IOException {
        if (args.length > 0) {
            Output.save(args, table().csv());
        } else {
            print(Output.utf8());
        }
    }

    static void print(PrintStream out) {
        WhatIfTable table = table();
        out.print(table);
        out.println();
        out.print(table.csv());
    }

    static WhatIfTable table() {
        return WhatIf.decidedAnew(Embed.order(), Embed.studio())
                .vary(Input.beating("tide grey"), hours(1), hours(5), 5)
                .show(Outcome.drainability("tide grey"), Outcome.drainTime("programme"), Outcome.caliper("programme"))
                .table();
    }
}
