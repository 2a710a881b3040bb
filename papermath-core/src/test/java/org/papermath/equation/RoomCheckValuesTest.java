package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class RoomCheckValuesTest {
    private static final double PRESSURE = Psychrometrics.STANDARD_PRESSURE;

    static List<CheckValues.Row> rows() {
        return CheckValues.read("room_humidity");
    }

    private static double ratio(double celsius, double humidity) {
        return Psychrometrics.humidityRatio(Psychrometrics.vapourPressure(celsius, humidity), PRESSURE);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void room(CheckValues.Row row) {
        double present = ratio(20, 0.5);
        double air = Room.dryAirMass(50, Psychrometrics.volume(20, present, PRESSURE));
        double passing = Room.ventilation(0.55 / 3600, ratio(20, 0.6), ratio(10, 0.8));
        double seventyF = 190 / 9.0;
        double sixtyF = 140 / 9.0;
        Map<String, Double> values = Map.of(
                "50 m3 20 C 50 % dry air",
                air,
                "water to 60 %",
                Room.waterToLimit(air, ratio(20, 0.6), present),
                "water to 70 %",
                Room.waterToLimit(air, ratio(20, 0.7), present),
                "ventilation .55 kg/h 20/60 out 10/80",
                3600 * Room.volumeFlow(passing, Psychrometrics.volume(20, ratio(20, 0.6), PRESSURE)),
                "surface 12.6 C in 20/50",
                100 * Room.surfaceRelativeHumidity(Psychrometrics.vapourPressure(20, 0.5), 12.6),
                "70 F 50 % cooled to 60 F",
                100 * Room.surfaceRelativeHumidity(Psychrometrics.vapourPressure(seventyF, 0.5), sixtyF));
        assertThat(values).containsKey(row.text("case"));
        assertThat(values.get(row.text("case"))).isCloseTo(row.number("value"), withinPercentage(0.01));
        assertThat(3600 * passing).isCloseTo(207.91, within(0.01));
    }

    @Test
    void publishedSurfaces() {
        double cold = Room.surfaceRelativeHumidity(Psychrometrics.vapourPressure(20, 0.5), 12.6);
        assertThat(cold).isCloseTo(0.80, within(0.005));
        assertThat(Room.surfaceRelativeHumidity(Psychrometrics.vapourPressure(190 / 9.0, 0.5), 140 / 9.0))
                .isCloseTo(0.70, within(0.01));
    }

    @Test
    void airNoDrierThanTheRoomDoesNotHelp() {
        assertThat(Room.ventilation(1e-4, 0.008, 0.008)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(Room.ventilation(0, 0.008, 0.009)).isZero();
        assertThat(Room.waterToLimit(60, 0.008, 0.009)).isNegative();
    }
}
