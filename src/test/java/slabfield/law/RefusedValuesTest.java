package slabfield.law;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Values that no law can have are refused by name. */
class RefusedValuesTest {
    static Stream<Arguments> values() {
        return Stream.of(
                refused("conductance", () -> new Conductance(0)),
                refused("conductance", () -> new Conductance(Double.NaN)),
                refused("conductance", () -> new Conductance(Double.POSITIVE_INFINITY)),
                refused("must not both be 0", () -> new QuadraticResistance(0, 0)),
                refused("linear resistance", () -> new QuadraticResistance(-1, 1)),
                refused("quadratic resistance", () -> new QuadraticResistance(1, Double.NaN)),
                refused("series resistance", () -> new QuadraticResistance(1, 1).behind(-1)),
                refused("crack width", () -> QuadraticResistance.crack(0, 1, 1, 0, 1, 1)),
                refused("crack length", () -> QuadraticResistance.crack(1, 1, 0, 0, 1, 1)),
                refused("bends", () -> QuadraticResistance.crack(1, 1, 1, -1, 1, 1)),
                refused("opening area", () -> Orifice.of(0, 0.61, 1.2)),
                refused("discharge coefficient", () -> Orifice.of(1, 0, 1.2)),
                refused("series resistance", () -> new Orifice(1, -1)),
                refused("leakage exponent", () -> new PowerLaw(1, 0.49, 0)),
                refused("leakage exponent", () -> new PowerLaw(1, 1.01, 0)),
                refused("leakage coefficient", () -> new PowerLaw(0, 0.65, 0)),
                refused("tile diameter", () -> TileFriction.corrugated(0, 0.017, 1, 1, 1)),
                refused("tile length", () -> TileFriction.corrugated(0.1, 0.017, 0, 1, 1)),
                refused("turbulent resistance", () -> new TileFriction(1, 0)),
                refused("at least two flows", () -> fan(new double[] {0}, new double[] {1}, 0.1)),
                refused("at least two flows", () -> fan(new double[] {0, 1}, new double[] {1}, 0.1)),
                refused("point 3", () -> fan(new double[] {0, 1, 1}, new double[] {3, 2, 1}, 0.1)),
                refused("point 2", () -> fan(new double[] {0, 1}, new double[] {1, 1}, 0.1)),
                refused("pipe diameter", () -> fan(new double[] {0, 1}, new double[] {1, 0}, 0)),
                refused("porosity", () -> Forchheimer.ergunPermeability(0.01, 1)),
                refused("grain diameter", () -> Forchheimer.ergunInertial(0, 0.4)),
                refused("permeability", () -> Forchheimer.wardInertial(0)),
                refused("relative roughness", () -> PipeFriction.colebrook(5000, -1e-3)),
                refused("temperature", () -> AirProperties.viscosity(0)),
                refused("altitude", () -> AirProperties.pressureAtAltitude(12000)),
                refused("velocity pressure", () -> Pitot.velocity(-1, 1.2)));
    }

    @ParameterizedTest
    @MethodSource("values")
    void refuses(String part, ThrowingCallable made) {
        assertThatThrownBy(made).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(part);
    }

    private static Arguments refused(String part, ThrowingCallable made) {
        return Arguments.of(part, made);
    }

    private static FanAndPipe fan(double[] flows, double[] rises, double diameter) {
        return new FanAndPipe(flows, rises, diameter, 1, 0, 0, 0, 1, 1);
    }
}
