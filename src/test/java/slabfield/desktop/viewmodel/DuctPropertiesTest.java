package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Kind;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Source.FanCurve;
import slabfield.model.Source.Pipe;
import slabfield.quantity.Unit;

class DuctPropertiesTest {
    private static final FanCurve CURVE = new FanCurve(List.of(0.0, 0.03, 0.07), List.of(400.0, 300.0, 0.0));
    private static final Pipe PIPE = new Pipe(0.1, 8, 3, 1.5, Pipe.USUAL_ROUGHNESS);

    private Workbench bench;

    private Inspector open(Scenario house) {
        bench = Bench.workbench(house);
        bench.units().flow().set(Unit.LITRE_PER_SECOND);
        bench.drawing().selection().set(List.of(Item.of(Kind.SUCTION, "S1")));
        return bench.drawing().inspector();
    }

    private Inspector withFan() {
        return open(Bench.house().withSuctionPoint("S1", p -> p.drawnBy(new Source.Fan(CURVE, PIPE, 0))));
    }

    private Property row(String label) {
        return bench.drawing().inspector().properties().stream()
                .filter(p -> p.label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    private Optional<String> set(String label, String text) {
        return bench.drawing().inspector().set(row(label), text);
    }

    private Source source() {
        return bench.document()
                .scenario()
                .get()
                .suctionPoint("S1")
                .orElseThrow()
                .source();
    }

    private Source.Fan fan() {
        return (Source.Fan) source();
    }

    @Test
    void theCurveIsARowForEachPointAndChangesPointByPoint() {
        assertThat(withFan().properties())
                .extracting(Property::value)
                .contains("0 L/s at 400 Pa", "30 L/s at 300 Pa", "70 L/s at 0 Pa");
        assertThat(set("Fan point 2", "40 at 1 inH2O")).isEmpty();
        assertThat(fan().curve().flows()).containsExactly(0.0, 0.04, 0.07);
        assertThat(fan().curve().rises().get(1)).isEqualTo(249.09, within(0.01));
        assertThat(set("One point more", "20 L/s at 380")).isEmpty();
        assertThat(fan().curve().flows()).containsExactly(0.0, 0.02, 0.04, 0.07);
        assertThat(row("Fan point 4").value()).isEqualTo("70 L/s at 0 Pa");
        assertThat(set("Fan point 2", "")).isEmpty();
        assertThat(fan().curve().flows()).containsExactly(0.0, 0.04, 0.07);
        bench.document().undo();
        assertThat(fan().curve().flows()).hasSize(4);
    }

    @Test
    void aCurveThatNoFanHasIsRefusedInWords() {
        withFan();
        assertThat(set("Fan point 2", "30 at 500")).get().asString().contains("lose pressure as its flow grows");
        assertThat(set("Fan point 2", "30")).get().asString().contains("flow at rise");
        assertThat(set("One point more", "30 at 100")).get().asString().contains("rising flow");
        set("Fan point 2", "");
        assertThat(set("Fan point 1", "")).get().asString().contains("at least two points");
        assertThat(fan().curve().flows()).hasSize(2);
    }

    @Test
    void aStretchOfPipeIsChangedNumberByNumber() {
        withFan();
        assertThat(row("Pipe diameter").value()).isEqualTo("100 mm");
        set("Pipe diameter", "3.068 in");
        set("Pipe length", "9,5");
        set("Pipe rise", "6");
        set("Pipe bends 90\u00b0", "5");
        set("Pipe bends 45\u00b0", "2");
        set("Pipe tees run", "1");
        set("Pipe tees turned", "4");
        set("Pipe fittings", "0,5");
        set("Pipe valve", "2.5");
        assertThat(fan().run())
                .containsExactly(new Pipe(
                        Unit.INCH.toSi(3.068), 9.5, 5, 0.5, Pipe.USUAL_ROUGHNESS, new Source.Turns(2, 1, 4), 2.5, 6));
        assertThat(set("Pipe bends 90\u00b0", "2.5")).get().asString().contains("whole number");
        assertThat(set("Pipe rise", "20")).get().asString().contains("not be more than the length");
        bench.units().length().set(Unit.FOOT);
        assertThat(row("Pipe diameter").value()).isEqualTo("3.068 in");
    }

    @Test
    void aRunGetsMoreStretchesAndFewer() {
        withFan();
        set("Pipe stretches", "2");
        set("Pipe 2 diameter", "75");
        set("Pipe 2 length", "4");
        assertThat(fan().run()).containsExactly(PIPE, new Pipe(0.075, 4, 0, 0, Pipe.USUAL_ROUGHNESS));
        set("Pipe stretches", "1");
        assertThat(fan().run()).containsExactly(PIPE);
    }

    @Test
    void aBranchShowsItsRiserTooAndChangesItForAll() {
        Scenario house =
                Bench.house().withSuctionPoint("S1", p -> p.drawnBy(new Source.Branch("garage", List.of(PIPE))));
        open(house.withEquipment(house.equipment().withRisers(List.of(new Riser("garage", CURVE, List.of(PIPE), 0)))));
        set("Pipe length", "3");
        set("Riser pipe length", "12");
        set("Riser fan point 2", "35 at 320");
        assertThat(((Source.Branch) source()).run().get(0).length()).isEqualTo(3);
        Riser riser =
                bench.document().scenario().get().equipment().riser("garage").orElseThrow();
        assertThat(riser.run().get(0).length()).isEqualTo(12);
        assertThat(riser.curve().flows().get(1)).isEqualTo(0.035);
        assertThat(set("Pipe stretches", "0")).get().asString().contains("pipe that leads to it");
    }
}
