package org.papermath.json;

import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

import org.papermath.air.Air;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;

/** Air by its temperature and humidity. */
final class AirMapping {
    private AirMapping() {
    }

    static Got<Air> read(ObjectAt in) {
        Got<Amount<Temperature>> temperature = in.required("temperature").quantity(Kinds.TEMPERATURE)
                .check(value -> Air.of(value, Air.reference().humidity()));
        Got<Amount<RelativeHumidity>> humidity = in.required("humidity").quantity(Kinds.RELATIVE_HUMIDITY)
                .check(value -> Air.of(Air.reference().temperature(), value));
        Got<Amount<Pressure>> pressure = in.optional("pressure").quantity(Kinds.AIR_PRESSURE)
                .check(value -> Air.reference().at(value));
        return in.make(() -> {
            Air air = Air.of(temperature.get(), humidity.get());
            return pressure.optional().map(air::at).orElse(air);
        });
    }

    static void write(ObjectOut out, Air air) {
        out.member("temperature").quantity(air.temperature());
        out.member("humidity").quantity(air.humidity());
        if (air.pressure().si() != Air.reference().pressure().si()) {
            out.member("pressure").quantity(air.pressure());
        }
    }
}
