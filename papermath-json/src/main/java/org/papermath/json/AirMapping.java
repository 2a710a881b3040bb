package org.papermath.json;

import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

import org.papermath.air.Air;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.RelativeHumidity;

/** Air by its temperature and humidity. */
final class AirMapping {
    private AirMapping() {
    }

    static Got<Air> read(ObjectAt in) {
        Got<Amount<Temperature>> temperature = Common.within(in.required("temperature"), Limits.AIR_TEMPERATURE,
                "air temperature");
        Got<Amount<RelativeHumidity>> humidity = Common.within(in.required("humidity"), Limits.AIR_HUMIDITY,
                "relative humidity");
        Got<Amount<Pressure>> pressure = Common.within(in.optional("pressure"), Limits.AIR_PRESSURE,
                "pressure of the atmosphere");
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
