package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.SystemCurve;
import slabfield.io.ExampleScenarios;
import slabfield.model.Scenario;

class SystemCurvesTest {
    private static final Scenario HOUSE = ExampleScenarios.all().stream()
            .filter(e -> e.file().equals("stone-footing.json"))
            .findFirst()
            .orElseThrow()
            .scenario()
            .withCellSize(0.5);

    /** The fan as it is is one of the solves by which the system curve is traced: there both curves give the same. */
    @Test
    void bothCurvesMeetWhereTheSystemWorks() {
        FanRanking.Ranked chosen =
                Sizing.of(HOUSE, Optional.empty(), Progress.NONE).chosen().orElseThrow();
        SystemCurve curve = SystemCurves.of(chosen, Progress.NONE).orElseThrow();
        assertThat(curve.name()).isEqualTo(chosen.fan().offer().id());
        assertThat(curve.system()).anySatisfy(p -> {
            assertThat(p[0]).isCloseTo(curve.flow(), within(1e-6 * curve.flow()));
            assertThat(p[1]).isCloseTo(curve.rise(), within(1e-5 * curve.rise()));
        });
        assertThat(curve.rise()).isEqualTo(FanCurves.rise(chosen.fan().curve(), curve.flow()));
        for (int i = 1; i < curve.system().size(); i++) {
            assertThat(curve.system().get(i)[0]).isGreaterThan(curve.system().get(i - 1)[0]);
            assertThat(curve.system().get(i)[1]).isGreaterThan(curve.system().get(i - 1)[1]);
            assertThat(curve.slab().get(i - 1)[1])
                    .as("the pipe takes its part")
                    .isPositive()
                    .isLessThan(curve.system().get(i)[1]);
        }
    }
}
