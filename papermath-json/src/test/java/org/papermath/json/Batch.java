package org.papermath.json;

/** A record with every member in it, for tests. */
final class Batch {
    static final String RECORD = """
            {
              "format": "papermath/record",
              "version": "1.0",
              "writtenBy": {"program": "notebook", "version": "0.9"},
              "name": "reed, second",
              "date": "2027-03-11",
              "recipe": {"name": "reed", "furnish": [{"fibre": "cotton-rag", "share": "60 %"},
                {"fibre": {"id": "garden-reed", "name": "garden reed", "class": "grass"}, "share": "40 %"}]},
              "beater": "big beater",
              "vat": "oak vat",
              "press": "long press",
              "dryer": "boards",
              "note": "Rain.\\nThe felts were wet.",
              "planned": [{"figure": "sheet.oven-dry", "kind": "mass", "value": "4.2 g"},
                {"figure": "drainability", "kind": "Schopper-Riegler number", "value": "31 SR"}],
              "measured": [
                {"what": "moisture sample", "fibre": "cotton-rag", "asBought": {"read": "50 g", "error": "0.1 g"},
                 "dried": {"read": "46.4 g", "error": "0.1 g", "on": "2027-03-10"}},
                {"what": "fibre weighed", "fibre": "cotton-rag", "asBought": {"read": "540 g", "error": "1 g"}},
                {"what": "beater load", "stock": {"read": "45 L", "error": "0.5 L"},
                 "time": {"read": "2.5 h", "error": "2 min"}},
                {"what": "drainability", "beating": {"read": "2.5 h", "error": "2 min"},
                 "number": {"read": "33 SR", "error": "1.5 SR"}, "x-by": "me"},
                {"what": "freeness", "beating": {"read": "0 h", "error": "0 min"},
                 "freeness": {"read": "560 mL_CSF", "error": "20 mL_CSF", "x-cup": 3}},
                {"what": "timed sheet", "time": {"read": "11 s", "error": "1 s"},
                 "depth": {"read": "28 mm", "error": "1 mm"}, "stock": {"read": "4.1 g/L", "error": "0.2 g/L"},
                 "water": "18 Cel"},
                {"what": "vat filled", "volume": {"read": "68 L", "error": "1 L"}},
                {"what": "water dried", "dripping": {"read": "0.2 g/L", "error": "0.02 g/L"},
                 "vat": {"read": "4 g/L", "error": "0.1 g/L"}},
                {"what": "weighed sheet", "couched": {"read": "41 g", "error": "0.1 g"},
                 "pressed": {"read": "12.4 g", "error": "0.1 g"}, "ovenDry": {"read": "4.1 g", "error": "0.01 g"},
                 "width": {"read": "210 mm", "error": "1 mm"}, "height": {"read": "297 mm", "error": "1 mm"}},
                {"what": "pressed", "force": {"read": "8 tonf_us", "error": "0.5 tonf_us"},
                 "pressure": {"read": "400 kPa", "error": "20 kPa"}, "hold": {"read": "5 min", "error": "10 s"}},
                {"what": "count", "step": "pressing", "handled": 60, "rejected": 3},
                {"what": "dried", "before": {"read": "248 g", "error": "1 g"}, "after": {"read": "120 g", "error": "1 g"},
                 "time": {"read": "6 h", "error": "5 min"}, "ovenDry": {"read": "82 g", "error": "0.5 g"},
                 "faces": "1.25 m2", "changes": 2, "air": {"temperature": "17 Cel", "humidity": "61 %"}},
                {"what": "finished", "width": {"read": "201 mm", "error": "0.5 mm"},
                 "height": {"read": "286 mm", "error": "0.5 mm"}, "mass": {"read": "4.4 g", "error": "0.01 g"},
                 "thickness": {"read": "180 um", "error": "4 um"}, "ovenDry": {"read": "4.1 g", "error": "0.01 g"},
                 "air": {"temperature": "18 Cel", "humidity": "58 %", "pressure": "98 kPa"}},
                {"what": "marks", "restraint": "blotters", "wetAlong": {"read": "200 mm", "error": "0.5 mm"},
                 "dryAlong": {"read": "193 mm", "error": "0.5 mm"}, "wetAcross": {"read": "200 mm", "error": "0.5 mm"},
                 "dryAcross": {"read": "190 mm", "error": "0.5 mm"}},
                {"what": "marks", "restraint": {"name": "on a drum", "subject": "drum", "heldAlong": true,
                 "heldAcross": false}, "wetAlong": {"read": "200 mm", "error": "0.5 mm"},
                 "dryAlong": {"read": "193 mm", "error": "0.5 mm"}, "wetAcross": {"read": "200 mm", "error": "0.5 mm"},
                 "dryAcross": {"read": "190 mm", "error": "0.5 mm"}},
                {"what": "hours", "work": "forming and couching", "time": {"read": "95 min", "error": "5 min"},
                 "count": 60}
              ],
              "x-weather": "rain"
            }
            """;

    private Batch() {
    }
}
