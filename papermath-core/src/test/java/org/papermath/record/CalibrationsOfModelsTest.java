package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibres;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.vat.Vat;

/** What a model is calibrated by without a record: the same doors the table of closed forms uses. */
class CalibrationsOfModelsTest {
    private static final Assumptions STORE = Assumptions.standard();

    private static Reading<Mass> weighed(double grams) {
        return Reading.of(grams(grams), grams(0.05));
    }

    @Test
    void sampleOfFibreTellsItsMoisture() {
        Assumptions found =
                BoughtFibre.calibrateMoisture(STORE, Fibres.ABACA, BoughtFibre.Form.SHEET, weighed(50), weighed(45.5));
        Assumption moisture = found.get("fibre.moisture-as-bought", Fibres.ABACA.scope());
        assertThat(moisture.likely()).isCloseTo(0.09, within(1e-12));
        assertThat(moisture.basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(moisture.high() - moisture.likely()).isBetween(0.003, 0.005);
        assertThatThrownBy(() -> BoughtFibre.calibrateMoisture(
                        STORE, Fibres.ABACA, BoughtFibre.Form.SHEET, weighed(45), weighed(50)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("mass after drying");
    }

    @Test
    void couchedSheetTellsItsSolids() {
        Scope vat = Scope.at("stone vat");
        Assumptions found = CouchedSheet.calibrate(STORE, vat, weighed(40), weighed(6));
        assertThat(found.si("web.solids-couched", vat)).isCloseTo(0.15, within(1e-12));
        assertThat(found.si("web.solids-couched", Scope.at("other vat")))
                .isEqualTo(STORE.si("web.solids-couched", Scope.at("other vat")));
    }

    @Test
    void marksTellTheShrinkageBothWays() {
        Scope scope = Scope.of("tide grey").on("the boards");
        Assumptions found = ShrinkageModel.calibrateMeasured(
                STORE,
                scope,
                Reading.of(mm(200), mm(0.5)),
                Reading.of(mm(192), mm(0.5)),
                Reading.of(mm(200), mm(0.5)),
                Reading.of(mm(190), mm(0.5)));
        assertThat(found.si("shrinkage.measured-along", scope)).isCloseTo(0.04, within(1e-12));
        assertThat(found.si("shrinkage.measured-across", scope)).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void sheetsOutOfTheOvenTellWhatIsLifted() {
        Scope vat = Scope.at("stone vat");
        Assumptions found = Vat.calibrateLift(STORE, vat, grams(5), List.of(weighed(5.2), weighed(5.4)));
        assertThat(found.si("vat.lift-factor", vat)).isCloseTo(1.06, within(1e-12));
        assertThatThrownBy(() -> Vat.calibrateLift(STORE, vat, grams(5), List.of()))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("vat.nothing-weighed"));
        assertThatThrownBy(() -> Vat.calibrateLift(STORE, vat, grams(0), List.of(weighed(5))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("planned oven-dry mass of a sheet");
    }

    @Test
    void stackThatIsDryTellsNothingOfItsFan() {
        Dryer.FanStack stack = new Dryer.FanStack("the stack", Kinds.VOLUME_FLOW.of(600, "m3/h"), 80);
        Air air = Air.of(celsius(20), RelativeHumidity.percent(50));
        assertThatThrownBy(() -> DryingModel.calibrateByWeighings(
                        STORE, stack, weighed(300), weighed(110), grams(100), hours(5), Kinds.AREA.of(1, "m2"), air))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("calibration.no-longer-wet"));
    }

    @Test
    void readingKnowsItsErrorAsAPart() {
        Reading<Mass> reading = Reading.of(grams(50), grams(2));
        assertThat(reading.relativeError()).isCloseTo(0.04, within(1e-15));
        assertThat(reading.above().in("g")).isCloseTo(52, within(1e-12));
    }

    @Test
    void shareIsKeptOffNothingAndEverything() {
        Scope scope = Scope.at("stone vat");
        Assumption none = STORE.measuredShare("vat.retention", scope, 0, 0.1).get("vat.retention", scope);
        Assumption all = STORE.measuredShare("vat.retention", scope, 1, 0.1).get("vat.retention", scope);
        assertThat(none.low()).isBetween(1e-9, none.likely());
        assertThat(all.high()).isBetween(all.likely(), 1 - 1e-9);
        assertThat(Kinds.SHARE.ofSi(all.likely(), "%").in("%")).isCloseTo(99.99, within(1e-9));
    }
}
