package org.papermath.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.papermath.colour.Lab;
import org.papermath.colour.WantedColour;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;

/** Documents for tests: an order with every member in it, and a plain one in two systems of units. */
final class Concert {
    static final String RECIPE = """
            {
              "format": "papermath/recipe",
              "version": "1.0",
              "name": "reed",
              "furnish": [
                {"fibre": "cotton rag", "share": "60 %", "form": "rag"},
                {"fibre": {"id": "garden-reed", "name": "garden reed", "class": "grass", "kin": ["straw", "kraft"]},
                 "share": "40 %"}
              ],
              "beating": "2.5 h",
              "drainability": "31 SR",
              "cooking": {"alkali": "caustic soda", "dose": "12 %"},
              "additives": [
                {"name": "china clay", "purpose": "filler", "dose": "4 %"},
                {"name": "ochre", "purpose": "pigment", "dose": "1.2 %"},
                {"name": "aid", "purpose": "retention aid", "dose": "0.1 %"},
                {"name": "chalk", "purpose": "carbonate", "dose": "3 %"},
                {"name": "size", "purpose": "internal size", "dose": "0.3 %", "active": "12 %"},
                {"name": "slime", "purpose": "formation aid", "dose": "0.2 %"},
                {"name": "methyl cellulose", "purpose": "binder", "dose": "0.5 %"}
              ],
              "beaterConsistency": "1.8 %",
              "stockConsistency": "1.6 %",
              "vatConsistency": "0.4 %",
              "sizeBath": "30 g/L",
              "x-note": {"grown": ["behind", "the shed"]}
            }
            """;

    /** Known by a stopwatch, with a fibre beaten apart. */
    static final String TIMED = """
            {
              "format": "papermath/recipe",
              "version": "1.0",
              "name": "rush",
              "furnish": [{"fibre": "cotton rag", "share": "70 %"}, {"fibre": "abaca", "share": "30 %"}],
              "beating": "2 h",
              "beatenApart": [{"fibre": "abaca", "time": "4.5 h"}],
              "timedSheet": {"time": "22 s", "fibre": "95 g/m2", "consistency": "0.4 %"},
              "stuff": "reed stuff",
              "colour": {"l": 71.5, "a": -2, "b": 24, "illuminant": "D50",
                         "told": {"l": 71.2, "a": -1.6, "b": 23.5}, "within": 2.4}
            }
            """;

    static final String STUDIO = """
            {
              "format": "papermath/studio",
              "version": "1.0",
              "name": "the boat house",
              "beater": {"name": "big beater", "trough": "45 L", "ratedLoad": "900 g", "x-built": 1987},
              "vat": {"name": "oak vat", "volume": "70 L", "runDownTo": "35 L", "temperature": "24 Cel",
                      "inside": ["500 mm", "70 cm"], "strainer": false},
              "moulds": [
                {"name": "half", "opening": ["380 mm", "560 mm"], "depth": "40 mm", "inTurn": 2},
                {"name": "pair", "opening": ["240 mm", "340 mm"],
                 "split": {"across": 1, "along": 2, "strip": "12 mm"}}
              ],
              "press": {"name": "long press", "jack": "20 tonf_us", "platen": ["450 mm", "600 mm"],
                        "parts": [{"name": "frame", "rating": "15 tonf_us"}], "daylight": "300 mm",
                        "pressings": 2, "ram": {"diameter": "60 mm", "takenUp": "500 N"},
                        "screw": {"lead": "10 mm", "meanDiameter": "40 mm", "friction": "20 %", "collar": "50 mm",
                                  "lever": "1.5 m", "people": 3, "handForce": "220 N"}},
              "felts": {"size": ["450 mm", "620 mm"], "grammage": "500 g/m2", "thickness": "2 mm", "count": 25},
              "dryers": [
                {"kind": "boards", "name": "boards", "capacity": 24, "layer": ["480 mm", "700 mm"]},
                {"kind": "loft", "name": "loft", "capacity": 120, "sheetsInSpur": 4},
                {"kind": "fan stack", "name": "box", "capacity": 40, "freeAirFlow": "400 m3/h",
                 "weight": "30 kg", "layer": ["460 mm", "640 mm"]},
                {"kind": "blotters", "name": "blotters", "capacity": 30, "layer": ["450 mm", "630 mm"]}
              ],
              "room": {"temperature": "18 Cel", "humidity": "58 %", "pressure": "98 kPa"},
              "ventilation": {"volume": "60 m3", "airChanges": "2 1/h"},
              "onHand": [{"fibre": "abaca", "ovenDry": "400 g"}, {"fibre": "cotton-rag", "ovenDry": "0.5 kg"}],
              "stuffOnHand": [{"recipe": "another grey", "ovenDry": "120 g", "consistency": "0.8 %", "made": "2026-12-20"}],
              "scaleStep": "5 g",
              "fineScaleStep": "0.01 g",
              "jugStep": "50 mL",
              "workingDay": "7 h",
              "workingTime": {"hours": [{"on": ["monday", "tuesday", "wednesday", "thursday"], "from": "09:00", "to": "12:30"},
                                        {"on": ["monday", "tuesday", "thursday"], "from": "13:30", "to": "17:00"}],
                              "off": [{"from": "2026-12-21", "to": "2027-01-03"}, {"from": "2027-03-26", "to": "2027-03-26"}]},
              "people": 2,
              "customaryUnits": true,
              "edition": "2026-11",
              "assumptions": [
                {"id": "beating.rate", "fibre": "cotton rag", "at": "big beater", "value": "0.12 1/h",
                 "low": 0.1, "high": "0.15 1/h", "basis": "measured here", "source": "freeness of 3 May",
                 "goesWith": [{"id": "beating.exponent", "subject": "abaca", "at": "beater", "below": -0.3, "above": -0.25}],
                 "unit": "1/h"},
                {"id": "order.spare-share", "value": "8 %"},
                {"id": "web.solids-pressed", "subject": "reed", "at": "boards", "value": 0.38, "unit": "1"},
                {"id": "sheet.density-measured", "subject": "reed", "value": "0.52 g/cm3", "low": "500 kg/m3",
                 "high": "540 kg/m3"}
              ]
            }
            """;

    static final String ORDER = """
            {
              "format": "papermath/order",
              "version": "1.0",
              "name": "spring concert",
              "due": "2027-04-09",
              "weighedIn": {"temperature": "20 Cel", "humidity": "65 %"},
              "asListed": true,
              "recipes": [{"ref": "papers/reed.json"}],
              "studio": {"ref": "studio.json"},
              "pieces": [
                {"name": "programme", "count": 70, "recipe": "reed", "size": "ISO A5", "grammage": "130 g/m2",
                 "spare": "12 %", "kept": 2, "trials": 3, "folds": 1, "trim": "4 mm", "gap": "3 mm", "dryer": "loft"},
                {"name": "seat card", "count": 96, "recipe": "reed", "size": ["55 mm", "90 mm"], "caliper": "0.4 mm",
                 "edge": "deckle", "x-colour": "grey"},
                {"name": "envelope", "count": 40, "recipe": "reed", "grammage": "95 g/m2", "envelopeFor": "programme",
                 "style": "side seam", "inserts": 2, "clearance": "6 mm", "mailedIn": "United States"},
                {"name": "poster", "count": 5, "recipe": "reed", "size": ["300 mm", "400 mm"],
                 "sample": {"size": ["100 mm", "100 mm"], "mass": "1.3 g", "caliper": "0.25 mm"}}
              ],
              "steps": [
                {"name": "bring it", "hands": "1.5 h", "waits": "3 d", "after": "pack"},
                {"name": "approve the proof", "waits": "4 d", "waitsAtLeast": "2 d", "waitsAtMost": "7 d",
                 "inWorkingDays": true, "after": "fibre", "before": "soak"}
              ]
            }
            """;

    /** Pieces that are formed to their outline, in each way an outline is given. */
    static final String SHAPES = """
            [
              {"name": "badge", "count": 12, "recipe": "reed", "outline": {"round": "70 mm"}, "grammage": "180 g/m2"},
              {"name": "plaque", "count": 9, "recipe": "reed", "outline": {"oval": ["60 mm", "90 mm"]},
               "edge": "shaped", "grammage": "180 g/m2"},
              {"name": "tag", "count": 24, "recipe": "reed", "grammage": "200 g/m2",
               "outline": {"corners": [{"across": "0 mm", "along": "0 mm"}, {"across": "50 mm", "along": "0 mm"},
                                       {"across": "50 mm", "along": "78 mm"}, {"across": "25 mm", "along": "90 mm"},
                                       {"across": "0 mm", "along": "78 mm"}]}},
              {"name": "tag envelope", "count": 24, "recipe": "reed", "grammage": "90 g/m2", "envelopeFor": "tag",
               "style": "side seam", "edge": "shaped"}
            ]
            """;

    /** Moulds with openings of an outline, in each way it is given. */
    static final String SHAPED_MOULDS = """
            [
              {"name": "badges", "outline": {"round": "73 mm"}, "split": {"across": 2, "along": 2, "strip": "9 mm"}},
              {"name": "plaques", "outline": {"oval": ["62 mm", "93 mm"]}, "depth": "20 mm"},
              {"name": "pennants", "inTurn": 2,
               "outline": {"corners": [{"across": "0 mm", "along": "0 mm"}, {"across": "60 mm", "along": "0 mm"},
                                       {"across": "30 mm", "along": "95.1 mm"}]}}
            ]
            """;

    static final DocumentResolver FILES = files(Map.of("papers/reed.json", RECIPE, "studio.json", STUDIO));

    private Concert() {}

    static DocumentResolver files(Map<String, String> texts) {
        return reference -> {
            String text = texts.get(reference);
            if (text == null) {
                throw new IOException("no " + reference);
            }
            return new DocumentResolver.Found(reference, text.getBytes(StandardCharsets.UTF_8), files(texts));
        };
    }

    /** A plan of stuff so slow that nobody can say how long it may drain. */
    static String planOfSlowStuff() {
        OrderDocument concert = read().value();
        Order order = Order.of("slow")
                .recipe(Recipe.of("slow", Furnish.of(Fibres.ABACA))
                        .beating(Amounts.hours(6))
                        .build())
                .piece(Piece.of("sheet", 9, "slow")
                        .size(Formats.ISO_A4)
                        .grammage(Grammage.gsm(40))
                        .build())
                .build();
        return PapermathDocuments.writePlan(
                MakingPlan.of(
                        order,
                        Studio.of("slow")
                                .vat(concert.studio().vat().orElseThrow())
                                .build()),
                "a test",
                "1");
    }

    /** A plan of two colours of one white stuff. */
    static String planOfTwoColours() {
        OrderDocument concert = read().value();
        Furnish reed = concert.order().recipes().get(0).furnish();
        Recipe pale = Recipe.of("pale", reed)
                .beating(Amounts.hours(2))
                .stuff("white")
                .colour(WantedColour.of(Lab.of(86, 1, 9)))
                .build();
        Order order = Order.of("two colours")
                .recipe(pale)
                .recipe(Recipe.of("blue", reed)
                        .beating(Amounts.hours(2))
                        .stuff("white")
                        .additive(Additive.of("blue pigment", Additive.Purpose.PIGMENT), Dose.percent(2))
                        .colour(WantedColour.of(Lab.of(50, -4, -30)).told(Lab.of(50.2, -4, -29), 3))
                        .build())
                .piece(Piece.of("sheet", 9, "pale")
                        .size(Formats.ISO_A4)
                        .grammage(Grammage.gsm(80))
                        .build())
                .piece(Piece.of("card", 9, "blue")
                        .size(Formats.ISO_A6)
                        .grammage(Grammage.gsm(180))
                        .build())
                .build();
        return PapermathDocuments.writePlan(MakingPlan.of(order, concert.studio()), "a test", "1");
    }

    static Document<OrderDocument> read() {
        return PapermathDocuments.readOrder(ORDER, FILES);
    }
}
