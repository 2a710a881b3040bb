package org.papermath.plan;

import java.util.LinkedHashMap;
import java.util.Map;

/** The cheapest measurement in a studio against each kind of assumption, by the beginning of its id. */
final class Measurements {
    private static final Map<String, String> BY_ID = new LinkedHashMap<>();

    static {
        BY_ID.put("fibre.moisture", "dry 20 g of the fibre as it lies and weigh it again");
        BY_ID.put("fibre.yield", "weigh one pot of fibre raw and as stuff");
        BY_ID.put("cook.", "weigh one pot of fibre raw and as stuff");
        BY_ID.put("fibre.water-retention", "weigh one sheet couched, pressed and dry");
        BY_ID.put("fibre.drainability", "weigh one sheet couched, pressed and dry");
        BY_ID.put("beating.", "time one sheet draining on the mould, or take one freeness after a known time");
        BY_ID.put("drainage.", "time one sheet draining on the mould");
        BY_ID.put("freeness.", "time one sheet draining on the mould");
        BY_ID.put("vat.retention", "dry one litre of the white water");
        BY_ID.put("vat.lift", "weigh the third couched sheet");
        BY_ID.put("additive.", "compare a jar of white water with a row of dilutions");
        BY_ID.put("web.", "weigh one sheet wet and dry");
        BY_ID.put("press.", "weigh one sheet couched, pressed and dry");
        BY_ID.put("felt.", "weigh one felt before and after pressing");
        BY_ID.put("sheet.", "weigh one dry sheet and measure its thickness");
        BY_ID.put("shrinkage.", "mark 200 mm both ways on one wet sheet and measure it dry");
        BY_ID.put("restraint.", "mark 200 mm both ways on one wet sheet and measure it dry");
        BY_ID.put("sorption.", "dry one sheet and weigh it again after a day in the room");
        BY_ID.put("drying.", "weigh the stack or one sheet twice, an hour apart");
        BY_ID.put("order.handling", "weigh what is strained from pails and beater at the end");
        BY_ID.put("reject.", "count the rejects at each step of one making");
        BY_ID.put("labour.", "note the time of one making");
        BY_ID.put("size.", "weigh one sheet dry and out of the size press");
        BY_ID.put("water.", "read the thermometer");
    }

    private Measurements() {}

    static String against(String id) {
        for (Map.Entry<String, String> entry : BY_ID.entrySet()) {
            if (id.startsWith(entry.getKey())) {
                return entry.getValue();
            }
        }
        return "look for a better source";
    }
}
