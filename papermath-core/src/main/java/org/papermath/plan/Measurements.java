package org.papermath.plan;

import java.util.LinkedHashMap;
import java.util.Map;

/** The cheapest measurement in a studio against each kind of assumption, by the beginning of its id. */
final class Measurements {
    private static final Map<String, One> BY_ID = new LinkedHashMap<>();

    static {
        BY_ID.put("fibre.moisture", new One("dry 20 g of the fibre as it lies and weigh it again", 20));
        BY_ID.put("fibre.yield", new One("weigh one pot of fibre raw and as stuff", 30));
        BY_ID.put("cook.", new One("weigh one pot of fibre raw and as stuff", 30));
        BY_ID.put("fibre.water-retention", new One("weigh one sheet couched, pressed and dry", 15));
        BY_ID.put("fibre.drainability", new One("weigh one sheet couched, pressed and dry", 15));
        BY_ID.put(
                "beating.",
                new One("time one sheet draining on the mould, or take one freeness after a known time", 10));
        BY_ID.put("drainage.", new One("time one sheet draining on the mould", 5));
        BY_ID.put("freeness.", new One("time one sheet draining on the mould", 5));
        BY_ID.put("vat.retention", new One("dry one litre of the white water", 20));
        BY_ID.put("vat.lift", new One("weigh the third couched sheet", 5));
        BY_ID.put("additive.", new One("compare a jar of white water with a row of dilutions", 30));
        BY_ID.put("web.", new One("weigh one sheet wet and dry", 15));
        BY_ID.put("press.", new One("weigh one sheet couched, pressed and dry", 15));
        BY_ID.put("felt.", new One("weigh one felt before and after pressing", 10));
        BY_ID.put("sheet.", new One("weigh one dry sheet and measure its thickness", 5));
        BY_ID.put("shrinkage.", new One("mark 200 mm both ways on one wet sheet and measure it dry", 10));
        BY_ID.put("restraint.", new One("mark 200 mm both ways on one wet sheet and measure it dry", 10));
        BY_ID.put("sorption.", new One("dry one sheet and weigh it again after a day in the room", 15));
        BY_ID.put("drying.", new One("weigh the stack or one sheet twice, an hour apart", 10));
        BY_ID.put("order.handling", new One("weigh what is strained from pails and beater at the end", 15));
        BY_ID.put("reject.", new One("count the rejects at each step of one making", 10));
        BY_ID.put("labour.", new One("note the time of one making", 10));
        BY_ID.put("size.", new One("weigh one sheet dry and out of the size press", 10));
        BY_ID.put("water.", new One("read the thermometer", 2));
    }

    private Measurements() {}

    /**
     * A measurement.
     *
     * @param words what to do
     * @param minutes hands on it, about
     */
    record One(String words, int minutes) {}

    static One against(String id) {
        for (Map.Entry<String, One> entry : BY_ID.entrySet()) {
            if (id.startsWith(entry.getKey())) {
                return entry.getValue();
            }
        }
        return new One("look for a better source", 60);
    }
}
