package org.papermath.json.mapping;

import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import org.papermath.air.Air;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.RelativeHumidity;

/** Air by its temperature and humidity. */
public final class AirMapping {
    private AirMapping() {}

    public static ReadResult<Air> read(ObjectReader in) {
        ReadResult<Amount<Temperature>> temperature =
                CommonMembers.within(in.required("temperature"), Limits.AIR_TEMPERATURE, "air temperature");
        ReadResult<Amount<RelativeHumidity>> humidity =
                CommonMembers.within(in.required("humidity"), Limits.AIR_HUMIDITY, "relative humidity");
        ReadResult<Amount<Pressure>> pressure =
                CommonMembers.within(in.optional("pressure"), Limits.AIR_PRESSURE, "pressure of the atmosphere");
        return in.make(() -> {
            Air air = Air.of(temperature.get(), humidity.get());
            return pressure.optional().map(air::at).orElse(air);
        });
    }

    public static void write(ObjectWriter out, Air air) {
        out.member("temperature").quantity(air.temperature());
        out.member("humidity").quantity(air.humidity());
        if (air.pressure().si() != Air.reference().pressure().si()) {
            out.member("pressure").quantity(air.pressure());
        }
    }
}
