package org.papermath.json;

/** Documents for tests: a list of prices and a quotation with every member in them. Every price is invented. */
final class Shop {
    static final String PRICES = """
            {
              "format": "papermath/prices",
              "version": "1.0",
              "name": "spring",
              "date": "2027-01-04",
              "currency": "EUR",
              "fibres": [
                {"fibre": "cotton rag", "price": "14 EUR per kg", "x-shop": "the mill by the weir"},
                {"fibre": "cotton rag (rag)", "price": "3.20 EUR per kg"}
              ],
              "additives": [
                {"additive": "china clay", "price": "3.80 EUR per 1 kg pack"},
                {"additive": "ochre", "price": "9.85 EUR per 100 g"}
              ],
              "alkalis": [{"alkali": "caustic soda", "price": "2.90 EUR per lb"}],
              "size": "31 EUR per kg",
              "water": "2.10 EUR per m3",
              "drain": "3.05 EUR per m3",
              "energy": "0.314 EUR per kW.h",
              "beaterPower": "1 hp",
              "dryerPower": "60 W",
              "hands": "24 EUR per h",
              "machine": "3 EUR per h",
              "cleaning": "90 min",
              "felt": {"price": "4.20 EUR per piece", "uses": 400},
              "blotter": {"price": "38 EUR per 100 pieces", "uses": 30},
              "overheads": [
                {"name": "rent", "perHour": "620 EUR per 120 h"},
                {"name": "stall", "perDay": "40 EUR"},
                {"name": "office", "onCost": "15 % on cost"}
              ],
              "lines": [
                {"name": "proofs", "per": "order", "money": "25 EUR"},
                {"name": "lye to neutralise", "per": "batch", "money": "1.50 EUR"},
                {"name": "sleeve", "per": "piece", "money": "0.12 EUR", "only": "programme"},
                {"name": "postage", "per": "parcel", "money": "7.90 EUR", "pieces": 50, "only": "programme"},
                {"name": "interleaf", "per": "sheet", "money": "0.03 EUR", "only": "programme"}
              ],
              "postage": {
                "carrier": "the ferry",
                "rates": [
                  {"from": "2026-01-01", "service": "letter", "upTo": "20 g", "price": "1.10 EUR", "source": "board at the pier",
                   "x-hook": 2},
                  {"from": "2026-01-01", "service": "letter", "upTo": "50 g", "price": "1.40 EUR", "source": "board at the pier"},
                  {"from": "2026-07-01", "service": "parcel", "upTo": "5 kg", "price": "6.20 EUR", "source": "the ferryman"}
                ],
                "surcharges": [
                  {"from": "2026-01-01", "service": "letter", "name": "square", "price": "0.70 EUR", "source": "board at the pier"},
                  {"from": "2026-07-01", "service": "parcel", "name": "bulky", "price": "2 EUR", "source": "the ferryman"}
                ]
              },
              "posted": [
                {"per": "mailed", "surcharges": ["square"], "only": "seat card"},
                {"per": "piece", "service": "letter", "surcharges": ["square"], "only": "seat card"},
                {"per": "parcel", "service": "parcel", "pieces": 50, "wrapping": "350 g", "surcharges": ["bulky"],
                 "only": "programme"}
              ]
            }
            """;

    static final String QUOTATION = """
            {
              "format": "papermath/quotation",
              "version": "1.0",
              "name": "spring concert",
              "studio": "the boat house",
              "date": "2027-01-05",
              "holdsUntil": "2027-02-04",
              "currency": "EUR",
              "lines": [
                {"piece": "programme", "count": 70, "price": "12.50 EUR",
                 "promised": ["size 148 mm by 210 mm", "weight 130 g/m\u00b2"], "seconds": "10.60 EUR", "x-shelf": 3},
                {"piece": "seat card", "count": 96, "price": "3.20 EUR"}
              ],
              "leastOrder": "250 EUR",
              "tax": {"name": "sales tax", "share": "19 %"},
              "deposit": "40 %",
              "restsOn": "table of assumptions 2026-11",
              "note": "No two sheets by hand are quite alike."
            }
            """;

    private Shop() {}
}
