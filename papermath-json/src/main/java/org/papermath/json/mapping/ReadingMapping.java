package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.papermath.evidence.Reading;
import org.papermath.json.FaultCodes;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;

/** What was read off an instrument, with how far off it may be: {@code {"read": "52 SR", "error": "2 SR"}}. */
public final class ReadingMapping {
    private ReadingMapping() {}

    public static <Q extends Quantity<Q>> ReadResult<Reading<Q>> read(ValueReader at, Kind<Q> kind) {
        if (at.isGiven() && !at.isObject()) {
            at.refuse(
                    FaultCodes.TYPE,
                    "an object is expected here: what was read and how far off it may be, such as"
                            + " {\"read\": \"52 " + kind.codes().get(0) + "\", \"error\": \"2 "
                            + kind.codes().get(0)
                            + "\"}.",
                    List.of("an object"));
            return ReadResult.faulty(at);
        }
        return at.object(in -> {
            ReadResult<Amount<Q>> value = in.required("read").quantity(kind);
            ReadResult<Amount<Q>> error = in.required("error").quantity(kind);
            ReadResult<LocalDate> day = in.optional("on").date();
            return in.make(() -> {
                Reading<Q> reading = Reading.of(value.get(), error.get());
                return day.optional().map(reading::on).orElse(reading);
            });
        });
    }

    public static <Q extends Quantity<Q>> void write(ValueWriter out, Reading<Q> reading) {
        out.object(in -> {
            in.member("read").quantity(reading.value());
            in.member("error").quantity(reading.error());
            reading.date().ifPresent(day -> in.member("on").date(day));
        });
    }

    public static <Q extends Quantity<Q>> void write(ObjectWriter out, String name, Optional<Reading<Q>> reading) {
        reading.ifPresent(one -> write(out.member(name), one));
    }
}
