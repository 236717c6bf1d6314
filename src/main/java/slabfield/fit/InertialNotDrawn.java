package slabfield.fit;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import slabfield.law.Forchheimer;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Layer;
import slabfield.model.Scenario;
import slabfield.model.Zone;

/**
 * Inertial coefficient of all coarse fill that is drawn without one, as a multiple of {@code 0.55/sqrt(k)} (Ward 1964). No stone
 * lets air through by Darcy's law alone: beside the pit it resists more, the more air is drawn. A fit that leaves this out takes
 * it for leaks, and expects too little vacuum once these are sealed.
 */
public final class InertialNotDrawn {
    /** Grains from round to crushed, porosities from 0.3 to 0.5. */
    private static final double SPREAD = 3;
    /** Drawn permeability from which fill may resist by inertia as well [m2]; in sand the air is too slow. */
    private static final double COARSE = 1e-9;

    private InertialNotDrawn() {}

    /** Empty where no fill is coarse and drawn without an inertial coefficient. */
    static Optional<Parameter> of(Scenario house) {
        boolean layer = counts(house.layer().fill());
        Set<String> zones = house.layer().zones().stream()
                .filter(z -> counts(z.fill()))
                .map(Zone::id)
                .collect(Collectors.toSet());
        if (!layer && zones.isEmpty()) return Optional.empty();
        return Optional.of(new Parameter(
                "inertial not drawn",
                Parameter.Kind.INERTIAL_NOT_DRAWN,
                "the inertial coefficient of fill that is drawn without one",
                new Prior(Prior.Scale.LOGARITHMIC, 1, SPREAD, "Ward 1964; common practice"),
                (h, m) -> with(h, layer, zones, m)));
    }

    /** The house with the usual inertial coefficient, Ward's, where coarse fill is drawn without one. */
    public static Scenario usual(Scenario house) {
        return of(house).map(p -> p.with(house, p.prior().median())).orElse(house);
    }

    private static boolean counts(Fill f) {
        return f.inertial() == 0 && f.word() != FillWord.VOID && f.permeability() >= COARSE;
    }

    private static Scenario with(Scenario h, boolean layer, Set<String> zones, double multiple) {
        Fill own = h.layer().fill();
        return h.withLayer(new Layer(
                layer ? inertial(own, multiple) : own,
                h.layer().zones().stream()
                        .map(z -> zones.contains(z.id())
                                ? new Zone(z.id(), z.outline(), inertial(z.fill(), multiple))
                                : z)
                        .toList()));
    }

    private static Fill inertial(Fill f, double multiple) {
        return new Fill(
                f.word(),
                f.thickness(),
                f.permeability(),
                multiple * Forchheimer.wardInertial(f.permeability()),
                f.assumed());
    }
}
