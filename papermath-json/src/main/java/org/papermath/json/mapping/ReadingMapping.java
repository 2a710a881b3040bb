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
    /** The member that is blank in a form. */
    public static final String READ = "read";

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
        if (at.isBlank(READ)) {
            at.refuse(
                    FaultCodes.UNFILLED,
                    "nothing is filled in here, but something else of this measurement is. Fill it in, or take all of the"
                            + " measurement out.",
                    List.of());
            return ReadResult.faulty(at);
        }
        return at.object(in -> {
            // It stands beside the blank for whoever fills it in; what is kept of the plan stands under "planned".
            ReadResult<Amount<Q>> planned = in.optional("planned").quantity(kind);
            ReadResult<Amount<Q>> value = in.required(READ).quantity(kind);
            ReadResult<Amount<Q>> error = in.required("error").quantity(kind);
            ReadResult<LocalDate> day = in.optional("on").date();
            return in.make(() -> {
                planned.optional();
                Reading<Q> reading = Reading.of(value.get(), error.get());
                return day.optional().map(reading::on).orElse(reading);
            });
        });
    }

    public static <Q extends Quantity<Q>> void write(ValueWriter out, Reading<Q> reading) {
        out.object(in -> {
            in.member(READ).quantity(reading.value());
            in.member("error").quantity(reading.error());
            reading.date().ifPresent(day -> in.member("on").date(day));
        });
    }

    public static <Q extends Quantity<Q>> void write(ObjectWriter out, String name, Optional<Reading<Q>> reading) {
        reading.ifPresent(one -> write(out.member(name), one));
    }
}
