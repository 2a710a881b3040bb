package org.papermath.testing;

import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.Quantity;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/** The inputs of a declared case: {@code name=value unit; name=value unit}. */
public final class Given {
    private final Map<String, String> values = new LinkedHashMap<>();

    /** Reads the inputs; fails on anything that is not name and value. */
    public Given(String text) {
        for (String part : text.split(";")) {
            int at = part.indexOf('=');
            if (at < 0) {
                throw new AssertionError("not name=value: \"" + part + "\"");
            }
            values.put(part.substring(0, at).trim(), part.substring(at + 1).trim());
        }
    }

    /** The input of a name, as an amount of a kind. */
    public <Q extends Quantity<Q>> Amount<Q> get(String name, Kind<Q> kind) {
        String text = values.get(name);
        if (text == null) {
            throw new AssertionError("no \"" + name + "\" among " + values.keySet());
        }
        return kind.read(text);
    }

    /** The whole number of a name. */
    public int count(String name) {
        return (int) get(name, Kinds.NUMBER).value();
    }

    /** The input of a name, as written. */
    public String text(String name) {
        return values.get(name);
    }
}
