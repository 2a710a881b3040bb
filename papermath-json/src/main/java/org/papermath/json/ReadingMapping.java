package org.papermath.json;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import javax.measure.Quantity;

import org.papermath.evidence.Reading;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;

/** What was read off an instrument, with how far off it may be: {@code {"read": "52 SR", "error": "2 SR"}}. */
final class ReadingMapping {
    private ReadingMapping() {
    }

    static <Q extends Quantity<Q>> Got<Reading<Q>> read(ValueAt at, Kind<Q> kind) {
        if (at.isGiven() && !at.isObject()) {
            at.refuse(FaultCodes.TYPE, "an object is wanted here: what was read and how far off it may be, such as"
                    + " {\"read\": \"52 " + kind.codes().get(0) + "\", \"error\": \"2 " + kind.codes().get(0)
                    + "\"}.", List.of("an object"));
            return Got.faulty(at);
        }
        return at.object(in -> {
            Got<Amount<Q>> value = in.required("read").quantity(kind);
            Got<Amount<Q>> error = in.required("error").quantity(kind);
            Got<LocalDate> day = in.optional("on").date();
            return in.make(() -> {
                Reading<Q> reading = Reading.of(value.get(), error.get());
                return day.optional().map(reading::on).orElse(reading);
            });
        });
    }

    static <Q extends Quantity<Q>> void write(ValueOut out, Reading<Q> reading) {
        out.object(in -> {
            in.member("read").quantity(reading.value());
            in.member("error").quantity(reading.error());
            reading.date().ifPresent(day -> in.member("on").date(day));
        });
    }

    static <Q extends Quantity<Q>> void write(ObjectOut out, String name, Optional<Reading<Q>> reading) {
        reading.ifPresent(one -> write(out.member(name), one));
    }
}
